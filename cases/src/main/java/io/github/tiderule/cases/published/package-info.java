/**
 * Published figures, as data, and what the engine makes of them.
 *
 * <p>{@code cases/published/figures.csv} holds each figure with its citation, how it was read, the
 * span within which it counts as reproduced, and whether it is. {@link Measures} measures the
 * engine by the name in the column {@code measure}; {@link FigureTable} holds one against the
 * other.
 */
@NullMarked
package io.github.tiderule.cases.published;

import org.jspecify.annotations.NullMarked;
