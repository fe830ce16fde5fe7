/**
 * The same blood by two methods.
 *
 * <p>Invented seasons are measured by one method, and what another would have read is reckoned from
 * what was published of the two: reading = intercept + slope × the first. Both go through the
 * engine, which should date ovulation alike and recommend the same first day. The first method
 * reads as it was published against radioimmunoassay; the second has the first's own errors, so
 * that nothing but the two scales differs.
 */
@NullMarked
package io.github.tiderule.cases.pairs;

import org.jspecify.annotations.NullMarked;
