/** What panels share about pictures: small images of them, their facts in words, their nights. */
package oblate.workbench.pictures;
