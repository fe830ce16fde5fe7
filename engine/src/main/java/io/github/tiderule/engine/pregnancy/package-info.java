/** The course of a dated season after breeding: whelping, what is due, and what is past. */
@NullMarked
package io.github.tiderule.engine.pregnancy;

import org.jspecify.annotations.NullMarked;
