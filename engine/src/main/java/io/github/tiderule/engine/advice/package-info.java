/**
 * What the engine answers, as immutable records whose component names are those of the Advice
 * document of the wire contract.
 *
 * <p>Instants carry the offset of the cycle's zone; days are local to it; probabilities and shares
 * lie in 0–1; {@code p05} to {@code p95} are posterior quantiles.
 */
@NullMarked
package io.github.tiderule.engine.advice;

import org.jspecify.annotations.NullMarked;
