/** The panel of nights: pictures in rows by night, cut to the disc; and the sheet that files what is dropped. */
package oblate.workbench.nights;
