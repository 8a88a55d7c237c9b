/**
 * Tables for others: columns with name, unit and meaning; rows from the catalog; writers as plug-ins.
 *
 * <p>The concept a newcomer gets wrong: a column is one thing with one unit, UCD and description, so that text, CSV and other writers cannot
 * disagree about it.
 */
package oblate.report;
