package io.github.tiderule.api.fault;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.record.store.Address;
import io.github.tiderule.api.record.store.Store;
import io.github.tiderule.api.record.table.Page;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;

/** What a service acknowledged, to be looked for in its record afterwards. */
final class Notebook {

  private static final Page.Wanted ALL = new Page.Wanted("", 1_000_000);
  private static final int DAYS_IN_HEAT = 9;

  private final Instant now;
  private final Map<String, Set<String>> observations = new ConcurrentHashMap<>();
  private final Map<String, Set<String>> advice = new ConcurrentHashMap<>();
  private final AtomicInteger counter = new AtomicInteger();

  /**
   * @param now about when it is, so that seasons are of these days
   */
  Notebook(Instant now) {
    this.now = now.truncatedTo(ChronoUnit.SECONDS);
  }

  /** Adds a female and a season of hers; gives its key. */
  String season(Client client) {
    String name = "{\"id\": \"bitch-" + counter.incrementAndGet() + "-" + hashCode() + "\"}";
    String female = client.post("/v1/females", name).mustBe(201).key();
    LocalDate onset = now.atZone(ZoneOffset.UTC).toLocalDate().minusDays(DAYS_IN_HEAT);
    String season =
        "{\"zone\": \"Europe/Vienna\", \"firstBlood\": {\"on\": \""
            + onset
            + "\", \"certainty\": \"seen\"}}";
    String path = "/v1/females/" + female + "/cycles";
    String key = client.post(path, season).mustBe(201).key();
    observations.put(key, ConcurrentHashMap.newKeySet());
    return key;
  }

  static String observations(String season) {
    return "/v1/cycles/" + season + "/observations";
  }

  static String advice(String season) {
    return "/v1/cycles/" + season + "/advice";
  }

  /** A new id for an observation. */
  String freshId() {
    return "p" + counter.incrementAndGet();
  }

  /** An observation as it is sent. */
  String observation(String id) {
    return "{\"id\": \""
        + id
        + "\", \"kind\": \"progesterone\", \"at\": \""
        + now.minus(1, ChronoUnit.DAYS)
        + "\", \"value\": 1.6, \"unit\": \"ng/mL\", \"method\": \"clia\", \"laboratory\": \"A\"}";
  }

  /** Enters an observation, and notes it if that is acknowledged. */
  Client.Got add(Client client, String season) {
    String id = freshId();
    Client.Got got = client.post(observations(season), observation(id));
    noteObservation(season, id, got);
    return got;
  }

  void noteObservation(String season, String id, Client.Got got) {
    if (got.status() == 201) {
      of(observations, season).add(id);
    }
  }

  void noteAdvice(String season, Client.Got got) {
    if (got.status() == 201) {
      of(advice, season).add(got.key());
    }
  }

  private static Set<String> of(Map<String, Set<String>> notes, String season) {
    return notes.computeIfAbsent(season, key -> ConcurrentHashMap.newKeySet());
  }

  /** How much was acknowledged. */
  int acknowledged() {
    return observations.values().stream().mapToInt(Set::size).sum()
        + advice.values().stream().mapToInt(Set::size).sum();
  }

  /** The record is sound, and holds all that was acknowledged. */
  void mustBeIn(Address address) {
    try (Store store = Store.open(address)) {
      mustBeIn(store);
    }
  }

  /** The open record is sound, and holds all that was acknowledged. */
  void mustBeIn(Store store) {
    if (store.isEmbedded()) {
      String sound =
          store.read(
              ledger ->
                  ledger
                      .handle()
                      .createQuery("PRAGMA integrity_check")
                      .mapTo(String.class)
                      .first());
      assertThat(sound, is("ok"));
    }
    assertThat("lost", missing(store), is(Map.of()));
  }

  private Map<String, Set<String>> missing(Store store) {
    Map<String, Set<String>> missing = new TreeMap<>();
    observations.forEach(
        (season, ids) -> {
          Set<String> lost = new TreeSet<>(ids);
          store.read(ledger -> ledger.entries().current(season)).stream()
              .map(Entry::observation)
              .forEach(lost::remove);
          note(missing, season, lost);
        });
    advice.forEach(
        (season, keys) -> {
          Set<String> lost = new TreeSet<>(keys);
          store.read(ledger -> ledger.advices().of(season, ALL)).items().stream()
              .map(GivenAdvice::key)
              .forEach(lost::remove);
          note(missing, season, lost);
        });
    return missing;
  }

  private static void note(Map<String, Set<String>> missing, String season, Set<String> lost) {
    if (!lost.isEmpty()) {
      missing.merge(
          season,
          lost,
          (one, other) -> {
            one.addAll(other);
            return one;
          });
    }
  }
}
