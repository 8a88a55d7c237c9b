/**
 * How the window looks and says numbers: themes, colours by meaning, the grammar of figures, the glyphs. Holds no state and knows no archive.
 */
package oblate.workbench.look;
