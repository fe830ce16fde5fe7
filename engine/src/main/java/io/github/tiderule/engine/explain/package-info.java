/** Why: the trace, near misses, disagreements, and how each observation is taken. */
@NullMarked
package io.github.tiderule.engine.explain;

import org.jspecify.annotations.NullMarked;
