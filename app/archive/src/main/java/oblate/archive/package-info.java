/**
 * The archive: a folder holding pictures and one catalog. Files pictures unaltered, keeps fits, marks and features with their history, searches,
 * and checks itself.
 *
 * <p>The concept a newcomer gets wrong: nothing is ever overwritten. A picture's file never changes; a new fit or mark supersedes the old one,
 * which stays readable. SQL lives here and nowhere else; no {@code Connection} leaves this package.
 */
package oblate.archive;
