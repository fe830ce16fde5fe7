package io.github.tiderule.engine.advice.reasoning;

import io.github.tiderule.rules.RuleBase;
import org.jspecify.annotations.Nullable;

/**
 * Which engine and which rules gave an answer.
 *
 * @param engine version of the engine
 * @param rules {@code sha256:} and the hash of rules, parameters and sources
 * @param overlay the clinic's own parameters; absent where there are none
 */
public record Stamp(String engine, String rules, @Nullable LocalProtocol overlay) {

  /** A stamp without parameters of a clinic's own. */
  public Stamp(String engine, String rules) {
    this(engine, rules, null);
  }

  /** The stamp of what some rules answer. */
  public static Stamp of(String engine, RuleBase rules) {
    return new Stamp(
        engine, rules.fingerprint(), rules.overlay().map(LocalProtocol::of).orElse(null));
  }
}
