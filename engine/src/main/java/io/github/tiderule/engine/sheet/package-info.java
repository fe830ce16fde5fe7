/** The sheet for the day of insemination: the semen in hand and what rules say of it. */
@NullMarked
package io.github.tiderule.engine.sheet;

import org.jspecify.annotations.NullMarked;
