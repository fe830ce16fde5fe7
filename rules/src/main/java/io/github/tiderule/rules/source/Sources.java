package io.github.tiderule.rules.source;

import java.util.Collection;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.csv.CSVRecord;

/** All sources, by key. Immutable. */
public final class Sources {

  /** The resource the sources come from. */
  public static final String RESOURCE = "/io/github/tiderule/sources.csv";

  private final SortedMap<String, Source> byKey;

  private Sources(SortedMap<String, Source> byKey) {
    this.byKey = byKey;
  }

  /**
   * Reads the source list that comes with the rules.
   *
   * @throws IllegalStateException if it is missing or names a key twice
   */
  public static Sources load() {
    SortedMap<String, Source> byKey = new TreeMap<>();
    for (CSVRecord row : Table.of(RESOURCE).rows()) {
      Source source = new Source(row.get("key"), row.get("citation"), row.get("readAs"));
      if (byKey.put(source.key(), source) != null) {
        throw new IllegalStateException("source " + source.key() + " stands twice");
      }
    }
    return new Sources(byKey);
  }

  /** Whether there is a source of that key. */
  public boolean contains(String key) {
    return byKey.containsKey(key);
  }

  /**
   * The source of a key.
   *
   * @throws IllegalArgumentException if there is none
   */
  public Source get(String key) {
    Source source = byKey.get(key);
    if (source == null) {
      throw new IllegalArgumentException("no source " + key);
    }
    return source;
  }

  /** All sources, by key. */
  public Collection<Source> all() {
    return byKey.values();
  }
}
