/**
 * What every report is written with: a page of plain lines and its sections, and the words for
 * observations, times, shares and numbers. Knows no report.
 */
@NullMarked
package io.github.tiderule.api.report.text;

import org.jspecify.annotations.NullMarked;
