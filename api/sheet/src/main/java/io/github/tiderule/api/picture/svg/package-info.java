/**
 * What pictures are drawn with: markup, colours, markers, smooth lines, hatching, and labels that
 * keep clear of each other. Knows nothing of seasons.
 */
@NullMarked
package io.github.tiderule.api.picture.svg;

import org.jspecify.annotations.NullMarked;
