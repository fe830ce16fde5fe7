package io.github.tiderule.api.record;

import io.github.tiderule.rules.fact.Worded;
import java.time.Instant;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What a vet signed about advice.
 *
 * @param person key of the vet, or of whoever uses a record without users
 * @param typedName the vet's name as it was typed, in a record without users; absent where the vet
 *     had signed in
 */
public record Review(
    String key,
    String advice,
    String person,
    Instant at,
    Verdict verdict,
    @Nullable String note,
    @Nullable String typedName) {

  /** Whether the vet would act on the advice. */
  public enum Verdict implements Worded {
    /** As it stands. */
    AGREED,
    /** Not as it stands; the note says why. */
    DISAGREED;

    @Override
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
