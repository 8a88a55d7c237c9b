/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

/**
 * Two wavelengths between which the air's dispersion is told.
 *
 * @param shortNm nm
 * @param longNm nm
 */
record Wavelengths(double shortNm, double longNm) {
    private static final double LEAST_NM = 300;
    private static final double GREATEST_NM = 1100;

    /**
     * Reads {@code 450,650}, in either order.
     *
     * @throws UsageException when it is anything else
     */
    static Wavelengths parse(String text) {
        String[] parts = text.strip().split("\\s*,\\s*", -1);
        try {
            double a = Double.parseDouble(parts[0]);
            double b = Double.parseDouble(parts[parts.length - 1]);
            Wavelengths read = new Wavelengths(Math.min(a, b), Math.max(a, b));
            if (parts.length == 2 && read.shortNm >= LEAST_NM && read.longNm <= GREATEST_NM && a != b) {
                return read;
            }
        } catch (NumberFormatException e) {
            // told below
        }
        throw new UsageException(
                "--wavelengths \"" + text + "\" are not two wavelengths of 300 to 1100 nm; write them like 450,650");
    }
}
