package io.github.tiderule.api.service;

import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.service.http.Body;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.format.cycle.CycleText;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeText;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Results that came from elsewhere and go into a season: all of them, or none. */
final class SeasonChanges {

  /**
   * One observation added, corrected or taken back.
   *
   * @param id its id
   * @param observation what it reads; absent when it is taken back
   * @param reason why one there is changed; absent for a new one
   */
  record Change(String id, Node.@Nullable Members observation, @Nullable String reason) {

    static Change added(Node.Members observation) {
      return new Change(Body.there(observation.text("id")), observation, null);
    }
  }

  private SeasonChanges() {}

  /**
   * Enters them, in their order.
   *
   * @param sent pointer to what they came from
   * @throws Refusal if the season with them would be no good cycle file
   */
  static void enter(
      Call call, Ledger ledger, Known.Season season, List<Change> changes, String sent) {
    String key = season.cycle().key();
    Instant moment = season.cycle().moment(call.now());
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
      String document = change.observation() == null ? null : NodeText.of(change.observation());
      Entry was = last.get(change.id());
      Entry entry =
          was == null
              ? ledger
                  .entries()
                  .add(
                      key,
                      change.id(),
                      Body.there(document),
                      call.person().key(),
                      moment,
                      call.now())
              : ledger
                  .entries()
                  .replace(
                      was,
                      document,
                      Body.there(change.reason()),
                      call.person().key(),
                      moment,
                      call.now());
      last.put(change.id(), entry);
      call.note(
          ledger,
          "observation-" + entry.change().word(),
          key + "/" + entry.number(),
          season.female().key());
    }
  }
}
