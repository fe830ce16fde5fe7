/**
 * The library other programs call: {@link io.github.tiderule.engine.Tiderule} turns a {@link
 * io.github.tiderule.engine.CycleRecord} into an {@link io.github.tiderule.engine.advice.Advice}.
 */
@NullMarked
package io.github.tiderule.engine;

import org.jspecify.annotations.NullMarked;
