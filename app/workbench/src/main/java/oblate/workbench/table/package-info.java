/** The panel of reports: which table, which layout, the page as it will be; save and copy. */
package oblate.workbench.table;
