/**
 * How long an answer takes, and where the time goes: code by JMH, commands as whole processes.
 *
 * <p>{@link io.github.tiderule.benchmark.Benchmark} runs everything and writes {@code figures.md}
 * and {@code cost.svg}. What is compared stands in one run, since machines differ and so do their
 * days.
 */
@NullMarked
package io.github.tiderule.benchmark;

import org.jspecify.annotations.NullMarked;
