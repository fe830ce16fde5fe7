/**
 * What the engine answers of her season itself: ovulation, pregnancy, whelping, and what is to be
 * done before it.
 */
@NullMarked
package io.github.tiderule.engine.advice.course;

import org.jspecify.annotations.NullMarked;
