package blindlap.session;

import blindlap.fault.Decimals;

/**
 * Which columns of a file of old days tell where a row belongs; each may be empty.
 *
 * @param date column with the date; empty if all rows are of one day
 * @param stint column with the stint; empty if every lap is a stint of its own
 * @param lap column with the number of the lap; empty if rows are in ridden order
 * @param setup column that says what was on; empty if none does
 * @param voids column that marks void laps; empty if none does
 * @param decimals sign of decimals
 */
public record PlainDayPlaces(
    String date, String stint, String lap, String setup, String voids, Decimals.Sign decimals) {}
