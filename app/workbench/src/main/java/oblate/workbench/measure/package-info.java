/**
 * The measuring desk: canvas, layers, marks.
 *
 * <p>Drawing has two parts: layers plan what to draw in picture pixels, anywhere and without a screen; the canvas paints it through one
 * {@link oblate.workbench.measure.CanvasView}, which hit-testing shares.
 */
package oblate.workbench.measure;
