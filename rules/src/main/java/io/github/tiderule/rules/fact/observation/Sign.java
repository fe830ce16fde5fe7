package io.github.tiderule.rules.fact.observation;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One sign, seen or looked for and not seen.
 *
 * @param present whether the sign was there
 * @param reason why she refused, or did not stand, if anybody found out; absent for other signs
 */
public record Sign(
    String id, Instant at, SignKind sign, boolean present, @Nullable RefusalReason reason)
    implements Observation {

  /** A sign of which no more is known. */
  public Sign(String id, Instant at, SignKind sign, boolean present) {
    this(id, at, sign, present, null);
  }

  /** A sign that was there. */
  public static Sign seen(SignKind sign, Instant at) {
    return new Sign(UNNAMED, at, sign, true);
  }

  /** A sign that was looked for and not there. */
  public static Sign notSeen(SignKind sign, Instant at) {
    return new Sign(UNNAMED, at, sign, false);
  }

  /** With why she refused, or did not stand. */
  public Sign reason(RefusalReason why) {
    return new Sign(id, at, sign, present, why);
  }

  /** Whether it is a refusal because it hurts her. */
  public boolean hurt() {
    return reason == RefusalReason.STRICTURE || reason == RefusalReason.PAIN;
  }

  @Override
  public Sign withId(String id) {
    return new Sign(id, at, sign, present, reason);
  }
}
