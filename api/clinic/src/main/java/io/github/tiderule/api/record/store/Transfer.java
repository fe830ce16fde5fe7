package io.github.tiderule.api.record.store;

import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.SeasonText;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.CycleText;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeReader;
import io.github.tiderule.format.node.NodeText;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.format.problem.Problems;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Seasons out of the record and into it, as cycle files on one line each. What is exported can be
 * imported anywhere; importing a file twice adds nothing the second time.
 *
 * <p>A cycle file tells how a season is known now. Former readings, advice and reviews stay in the
 * record, and in its backup.
 */
public final class Transfer {

  /** What became of one cycle file. */
  public sealed interface Outcome {

    /**
     * Something was added.
     *
     * @param differing JSON Pointers of what the file says of her or the season, and the record
     *     does not; the record stays as it is
     */
    record Added(int observations, List<String> differing) implements Outcome {}

    /**
     * All of it was there.
     *
     * @param differing JSON Pointers of what the file says of her or the season, and the record
     *     does not; the record stays as it is
     */
    record There(List<String> differing) implements Outcome {}

    /** Nothing was added. */
    record Refused(List<Problem> problems) implements Outcome {}
  }

  /** Carries a refusal out of a piece of work, which undoes it. */
  private static final class Undo extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient Outcome.Refused refused;

    Undo(Problem problem) {
      super(problem.message(), null, false, false);
      refused = new Outcome.Refused(List.of(problem));
    }
  }

  private final Store store;
  private final String person;
  private final Instant now;

  private Transfer(Store store, String person, Instant now) {
    this.store = store;
    this.person = person;
    this.now = now;
  }

  /**
   * Gives every season as a cycle file on one line, females in the order they were added.
   *
   * @param owner key of the person whose females are wanted; absent for all
   * @param line told each line, without its line feed
   * @return how many females have no season, and so are on no line
   */
  public static int export(Store store, @Nullable String owner, Consumer<String> line) {
    int without = 0;
    Page.Wanted wanted = Page.Wanted.FIRST;
    while (true) {
      Page.Wanted part = wanted;
      Page<Female> page = store.read(ledger -> ledger.females().all(part));
      for (Female female : page.items()) {
        if ((owner == null || owner.equals(female.owner())) && !export(store, female, line)) {
          without++;
        }
      }
      if (page.next() == null) {
        return without;
      }
      wanted = new Page.Wanted(page.next(), wanted.limit());
    }
  }

  private static boolean export(Store store, Female female, Consumer<String> line) {
    List<String> files =
        store.read(
            ledger ->
                ledger.cycles().all(female.key()).stream()
                    .map(
                        cycle ->
                            SeasonText.of(
                                cycle.seenAt(),
                                female,
                                cycle,
                                ledger.entries().current(cycle.key())))
                    .toList());
    files.forEach(line);
    return !files.isEmpty();
  }

  /**
   * Takes one cycle file in. A female of the same {@code female.id} is taken to be the same, and a
   * season of hers with the same first blood too; what the record says of either stays as it is.
   *
   * @param person key of the person whose females they are
   */
  public static Outcome take(Store store, String person, byte[] utf8, Instant now) {
    Reading reading = CycleFile.read(utf8);
    if (reading instanceof Reading.Refused refused) {
      return new Outcome.Refused(refused.problems());
    }
    Transfer transfer = new Transfer(store, person, now);
    try {
      return transfer.take(((Reading.Read) reading).cycle(), utf8);
    } catch (Undo e) {
      return e.refused;
    }
  }

  private Outcome take(CycleRecord cycle, byte[] utf8) {
    String text = new String(utf8, StandardCharsets.UTF_8).replaceFirst("^\uFEFF", "");
    Node.Members file = (Node.Members) NodeReader.read(text, new Problems()).orElseThrow();
    if (cycle.female().id() == null || !(file.byKey().get("female") instanceof Node.Members her)) {
      throw new Undo(
          new Problem(
              "/female/id",
              ProblemCode.MISSING_FIELD,
              "id is missing; a record must know whose season it is",
              "Maybe give her an id of your own?"));
    }
    String name = cycle.female().id();
    return store.change(
        ledger -> {
          Female female =
              ledger
                  .females()
                  .named(person, name)
                  .orElseGet(() -> ledger.females().add(person, name, NodeText.of(her), now));
          List<String> differing =
              new ArrayList<>(differing(her, female.document(), Pointer.ROOT.child("female")));
          return season(ledger, female, cycle.asOf(), file, differing);
        });
  }

  /** What an object says that the record says otherwise or not at all. */
  private static List<String> differing(Node.Members said, String onFile, Pointer at) {
    Node.Members there = (Node.Members) NodeReader.read(onFile, new Problems()).orElseThrow();
    return said.byKey().entrySet().stream()
        .filter(one -> !one.getValue().equals(there.byKey().get(one.getKey())))
        .map(one -> at.child(one.getKey()).text())
        .toList();
  }

  private Outcome season(
      Ledger ledger, Female female, Instant seenAt, Node.Members file, List<String> differing) {
    String document = CycleText.season(file);
    Optional<Cycle> there =
        ledger.cycles().all(female.key()).stream().filter(one -> isSame(one, document)).findFirst();
    Cycle cycle =
        there.orElseGet(
            () ->
                ledger
                    .cycles()
                    .add(female.key(), document, over(female, file, seenAt), seenAt, person, now));
    Node.Members season = (Node.Members) NodeReader.read(document, new Problems()).orElseThrow();
    differing.addAll(differing(season, cycle.document(), Pointer.ROOT));
    int added = 0;
    List<Node> observations = ((Node.Entries) node(file, "observations")).all();
    for (int i = 0; i < observations.size(); i++) {
      if (observation(ledger, cycle, (Node.Members) observations.get(i), seenAt, i)) {
        added++;
      }
    }
    return there.isPresent() && added == 0
        ? new Outcome.There(List.copyOf(differing))
        : new Outcome.Added(added, List.copyOf(differing));
  }

  private static Node node(Node.Members object, String name) {
    Node node = object.byKey().get(name);
    if (node == null) {
      throw new IllegalStateException("a good cycle file lacks " + name);
    }
    return node;
  }

  private static boolean isSame(Cycle cycle, String document) {
    if (cycle.document().equals(document)) {
      return true;
    }
    Node one = firstBlood(cycle.document());
    return one.equals(firstBlood(document))
        && one instanceof Node.Members blood
        && blood.byKey().containsKey("on");
  }

  private static Node firstBlood(String document) {
    Node season = NodeReader.read(document, new Problems()).orElseThrow();
    return node((Node.Members) season, "firstBlood");
  }

  /** The moment to keep looking at it from, for a season that cannot be looked at from now. */
  private @Nullable Instant over(Female female, Node.Members file, Instant seenAt) {
    List<String> observations =
        ((Node.Entries) node(file, "observations")).all().stream().map(NodeText::of).toList();
    String present = CycleText.of(now, female.document(), CycleText.season(file), observations);
    return CycleText.read(present) instanceof Reading.Read ? null : seenAt;
  }

  private boolean observation(
      Ledger ledger, Cycle cycle, Node.Members observation, Instant seenAt, int place) {
    String id = ((Node.Text) node(observation, "id")).value();
    String document = NodeText.of(observation);
    List<Entry> history = ledger.entries().history(cycle.key(), id);
    if (history.isEmpty()) {
      ledger.entries().add(cycle.key(), id, document, person, seenAt, now);
      return true;
    }
    if (!document.equals(history.get(history.size() - 1).document())) {
      throw new Undo(
          new Problem(
              Pointer.ROOT.child("observations").child(place).child("id").text(),
              ProblemCode.DUPLICATE_ID,
              "the record has another reading of \"" + id + "\"",
              "Maybe correct or take back the one in the record, which keeps both?"));
    }
    return false;
  }
}
