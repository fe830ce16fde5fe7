/** The days ahead, their reasons, and the plan made of them; and what is done of it so far. */
@NullMarked
package io.github.tiderule.engine.plan;

import org.jspecify.annotations.NullMarked;
