package io.github.tiderule.engine.validation;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The ids of a season's observations as they are met, each with its place. */
public final class UniqueIds {

  private final Map<String, String> places = new HashMap<>();

  /**
   * Notes an id.
   *
   * @param place where it stands, for messages
   * @return that it stands elsewhere already; empty where it does not
   */
  public Optional<Violation> add(String id, String place) {
    @Nullable String first = places.putIfAbsent(id, place);
    return first == null
        ? Optional.empty()
        : Optional.of(
            Violation.of(
                "id",
                Violation.Code.DUPLICATE_ID,
                id,
                "id is \"" + id + "\", which is already the id at " + first));
  }
}
