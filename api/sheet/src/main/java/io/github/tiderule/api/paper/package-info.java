/**
 * Sheets of paper, as PDF: one page for the breeder, and a summary of at most three for the vet.
 *
 * <p>A sheet is a list of {@link io.github.tiderule.api.paper.Part}s written as HTML and set by a
 * library. Where it does not fit, it is set again with less {@link
 * io.github.tiderule.api.paper.Room}: parts then leave out their least important lines and say how
 * many. What is said comes from {@code api.report}; a part adds headings and no judgement.
 */
@NullMarked
package io.github.tiderule.api.paper;

import org.jspecify.annotations.NullMarked;
