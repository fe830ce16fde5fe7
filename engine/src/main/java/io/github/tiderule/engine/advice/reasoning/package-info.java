/**
 * Why the engine answers as it does: what each rule and observation did, and which rules answered.
 */
@NullMarked
package io.github.tiderule.engine.advice.reasoning;

import org.jspecify.annotations.NullMarked;
