package io.github.tiderule.api.service;

import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.service.http.Body;
import io.github.tiderule.api.service.http.Hand;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.format.cycle.CycleText;
import io.github.tiderule.format.fhir.Found;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeText;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Results that came from elsewhere and go into a season: all of them, or none. */
public final class SeasonChanges {

  /**
   * One observation added, corrected or taken back.
   *
   * @param id its id
   * @param observation what it reads; absent when it is taken back
   * @param reason why one there is changed; absent for a new one
   */
  public record Change(String id, Node.@Nullable Members observation, @Nullable String reason) {

    /** One that is new. */
    public static Change added(Node.Members observation) {
      return new Change(Body.there(observation.text("id")), observation, null);
    }
  }

  private SeasonChanges() {}

  /** What FHIR Observations change. */
  public static List<Change> of(List<Found> all) {
    return all.stream()
        .filter(found -> found.outcome().changes())
        .map(
            found ->
                new Change(Body.there(found.id()), found.observation(), reason(found.outcome())))
        .toList();
  }

  private static @Nullable String reason(Found.Outcome outcome) {
    return switch (outcome) {
      case CORRECTION -> "The laboratory corrected it.";
      case RETRACTION -> "The laboratory says it was entered in error.";
      default -> null;
    };
  }

  /**
   * Enters them, in their order.
   *
   * @param sent pointer to what they came from
   * @throws Refusal if the season with them would be no good cycle file
   */
  public static void enter(
      Hand hand, Ledger ledger, Known.Season season, List<Change> changes, String sent) {
    String key = season.cycle().key();
    Instant moment = season.cycle().moment(hand.now());
    Map<String, Entry> last = new LinkedHashMap<>();
    Map<String, String> documents = new LinkedHashMap<>();
    for (Entry entry : ledger.entries().current(key)) {
      last.put(entry.observation(), entry);
      documents.put(entry.observation(), Body.there(entry.document()));
    }
    for (Change change : changes) {
      if (change.observation() == null) {
        documents.remove(change.id());
      } else {
        documents.put(change.id(), NodeText.of(change.observation()));
      }
    }
    CycleCheck.read(
        CycleText.of(
            moment,
            season.female().document(),
            season.cycle().document(),
            List.copyOf(documents.values())),
        "/observations",
        sent);
    for (Change change : changes) {
      Entry was = last.get(change.id());
      if (was == null && change.reason() != null) {
        was = ledger.entries().last(key, change.id()).orElse(null);
      }
      Entry entry =
          was == null
              ? ledger
                  .entries()
                  .add(
                      key,
                      change.id(),
                      NodeText.of(Body.there(change.observation())),
                      hand.person().key(),
                      moment,
                      hand.now())
              : changed(hand, ledger, was, change, moment);
      last.put(change.id(), entry);
      hand.note(
          ledger,
          "observation-" + entry.change().word(),
          key + "/" + entry.number(),
          season.female().key());
    }
  }

  private static Entry changed(Hand hand, Ledger ledger, Entry was, Change change, Instant moment) {
    String reason = Body.there(change.reason());
    String person = hand.person().key();
    Node.Members observation = change.observation();
    String document = observation == null ? null : NodeText.of(observation);
    return was.change() == io.github.tiderule.api.record.Change.RETRACTED && document != null
        ? ledger.entries().restore(was, document, reason, person, moment, hand.now())
        : ledger.entries().replace(was, document, reason, person, moment, hand.now());
  }
}
