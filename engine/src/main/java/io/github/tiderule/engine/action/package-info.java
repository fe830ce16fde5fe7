/** The headline: what to do now, and until when that holds. */
@NullMarked
package io.github.tiderule.engine.action;

import org.jspecify.annotations.NullMarked;
