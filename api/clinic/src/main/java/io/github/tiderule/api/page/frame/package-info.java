/**
 * What every page stands in: the frame around it, its style and script, the templates it is written
 * by, whose season it is, and how a form is saved. Knows no page.
 */
@NullMarked
package io.github.tiderule.api.page.frame;

import org.jspecify.annotations.NullMarked;
