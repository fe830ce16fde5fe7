/**
 * The course of a season as a picture: one SVG, made without any script, style sheet or file beside
 * it, and its numbers as a table.
 *
 * <p>{@link io.github.tiderule.api.picture.Curve} puts the parts together from top to bottom; each
 * part draws itself into an {@link io.github.tiderule.api.picture.svg.Svg} within a {@link
 * io.github.tiderule.api.picture.Frame}. Nothing is told by colour alone, and a label that finds no
 * room is left to the table.
 */
@NullMarked
package io.github.tiderule.api.picture;

import org.jspecify.annotations.NullMarked;
