/** The estimator. */
@NullMarked
package io.github.tiderule.engine.timeline;

import org.jspecify.annotations.NullMarked;
