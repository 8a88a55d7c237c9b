/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import oblate.workbench.words.Texts;

/**
 * How numbers are said on screen: one grammar for all.
 *
 * <p>A standard error is given to one figure, or two when it begins with 1, and the value is rounded alike; the minus is U+2212; degrees follow
 * the value, other units the error. {@link #ascii} turns the same text into plain ASCII for files.
 */
public final class Figures {
    private static final Texts TEXTS = Texts.of(Figures.class);
    /** Minus sign of the screen. */
    public static final char MINUS = '\u2212';

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

    private Figures() {}

    /**
     * Decimals (negative for tens, hundreds …) that a standard error asks for.
     *
     * @param sigma standard error, any unit; zero, negative and non-finite ones give 1 decimal
     */
    public static int decimalsFor(double sigma) {
        if (!(sigma > 0) || Double.isInfinite(sigma)) {
            return 1;
        }
        BigDecimal exact = new BigDecimal(Double.toString(sigma)).stripTrailingZeros();
        int exponent = exact.precision() - exact.scale() - 1;
        BigDecimal oneFigure = exact.setScale(-exponent, RoundingMode.HALF_UP);
        int shown = oneFigure.precision() - oneFigure.scale() - 1;
        boolean beginsWithOne = firstDigit(exact) == '1' || firstDigit(oneFigure) == '1';
        return beginsWithOne ? 1 - shown : -exponent;
    }

    private static char firstDigit(BigDecimal number) {
        return number.unscaledValue().toString().charAt(0);
    }

    /** A value with its standard error, e.g. {@code 213.4° ± 0.3} or {@code −1.62 ± 0.04 °/30 d}; without a usable error one decimal. */
    public static String withSigma(double value, double sigma, String unit) {
        int decimals = decimalsFor(sigma);
        boolean degrees = unit.equals("°");
        String text = fixed(value, decimals) + (degrees ? "°" : "");
        if (sigma > 0 && Double.isFinite(sigma)) {
            text += " ± " + fixed(sigma, decimals);
        }
        return degrees || unit.isEmpty() ? text : text + " " + unit;
    }

    /** A longitude with its standard error, never shown as 360°. */
    public static String longitude(double lonDeg, double sigmaDeg) {
        return withSigma(turned(lonDeg, Math.max(0, decimalsFor(sigmaDeg))), sigmaDeg, "°");
    }

    /** A longitude to one decimal, never shown as 360°. */
    public static String longitude(double lonDeg) {
        return fixed(turned(lonDeg, 1), 1) + "°";
    }

    private static double turned(double lonDeg, int decimals) {
        double lon = ((lonDeg % 360) + 360) % 360;
        return fixed(lon, decimals).startsWith("360") ? 0 : lon;
    }

    /** A planetographic latitude with its standard error, saying its kind. */
    public static String latitudeGraphic(double latDeg, double sigmaDeg) {
        return TEXTS.text("latitude.graphic", withSigma(latDeg, sigmaDeg, "°"));
    }

    /** A number with so many decimals (negative: rounded to tens, hundreds …), minus as U+2212, never a negative zero. */
    public static String fixed(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return "–";
        }
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
        String text = rounded.abs().toPlainString();
        return rounded.signum() < 0 ? MINUS + text : text;
    }

    /** A period of rotation with its standard error, e.g. {@code 9h55m41.3s ± 0.2}; both in seconds. */
    public static String period(double periodS, double sigmaS) {
        int decimals = Math.max(0, decimalsFor(sigmaS));
        BigDecimal all = BigDecimal.valueOf(Math.abs(periodS)).setScale(decimals, RoundingMode.HALF_UP);
        long minutes = all.divideToIntegralValue(BigDecimal.valueOf(60)).longValue();
        BigDecimal seconds = all.subtract(BigDecimal.valueOf(60 * minutes));
        String second = (seconds.compareTo(BigDecimal.TEN) < 0 ? "0" : "") + seconds.toPlainString();
        String text = String.format(Locale.ROOT, "%dh%02dm%ss", minutes / 60, minutes % 60, second);
        return sigmaS > 0 && Double.isFinite(sigmaS) ? text + " ± " + fixed(sigmaS, decimals) : text;
    }

    /** Time of day in UT to a tenth of a minute, e.g. {@code 21:05.5 UT}. */
    public static String clockUt(Instant time) {
        var utc = time.atOffset(ZoneOffset.UTC);
        int tenths = (utc.getSecond() * 10 + 30) / 60;
        if (tenths == 10) {
            utc = utc.plusMinutes(1);
            tenths = 0;
        }
        return String.format(Locale.ROOT, "%02d:%02d.%d UT", utc.getHour(), utc.getMinute(), tenths);
    }

    /** Day in UT, e.g. {@code 24 March 2031}. */
    public static String dayUt(Instant time) {
        return DAY.format(time.atOffset(ZoneOffset.UTC));
    }

    /** The same text for files: minus and plus-minus in ASCII, degree signs as {@code deg}. */
    public static String ascii(String text) {
        return text.replace(MINUS, '-').replace("±", "+/-").replace("°", " deg").replace("–", "-");
    }
}
