package io.github.tiderule.api.command;

import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.command.stream.Engine;
import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.api.command.stream.Given;
import io.github.tiderule.api.command.stream.Output;
import io.github.tiderule.api.command.stream.Streams;
import io.github.tiderule.api.page.form.LocalTimes;
import io.github.tiderule.api.page.form.ObservationForm;
import io.github.tiderule.api.page.form.SeasonForm;
import io.github.tiderule.api.page.form.Typed;
import io.github.tiderule.api.page.plan.Documents;
import io.github.tiderule.api.page.plan.Seasons;
import io.github.tiderule.api.page.plan.Standing;
import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.store.Store;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.report.AdviceReport;
import io.github.tiderule.api.report.FirstScreen;
import io.github.tiderule.api.service.CycleCheck;
import io.github.tiderule.api.service.Known;
import io.github.tiderule.api.service.Recording;
import io.github.tiderule.api.service.SeasonBundle;
import io.github.tiderule.api.service.SeasonChanges;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.change.Told;
import io.github.tiderule.format.cycle.CycleText;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.json.AdviceJson;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.problem.NearMiss;
import java.io.IOException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ParseResult;

/**
 * The commands on a female of the record, by her name: her season is begun, a result entered, the
 * plan read. What is typed is read as in the forms of the pages.
 */
final class FemaleCommands {

  private static final Texts TEXTS = Texts.ofPages(Locale.ROOT);

  /** What is entered, by the word for it: the kind of observation, and the field that is typed. */
  private static final Map<String, List<String>> RESULTS =
      Map.of(
          "progesterone", List.of("progesterone", "value"),
          "lh", List.of("lh", "result"),
          "smear", List.of("cytology", "cornifiedPercent"),
          "sign", List.of("sign", "sign"),
          "temperature", List.of("temperature", "celsius"));

  private final Streams streams;
  private final Supplier<Engine> engine;
  private final Store store;
  private final Terminal hand;

  FemaleCommands(Streams streams, Supplier<Engine> engine, Store store, Person owner, Instant now) {
    this.streams = streams;
    this.engine = engine;
    this.store = store;
    this.hand = new Terminal(owner, now);
  }

  /** A season of the record that results are taken into. */
  private record OfRecord(
      Store store,
      Terminal hand,
      Known.Season of,
      CycleRecord cycle,
      Set<String> taken,
      String words)
      implements Into {

    @Override
    public String season() {
      return of.cycle().key();
    }

    @Override
    public void save(List<SeasonChanges.Change> changes) {
      store.change(
          ledger -> {
            SeasonChanges.enter(hand, ledger, of, changes, "");
            return true;
          });
    }
  }

  /**
   * @throws IOException if something cannot be written
   */
  int begin(String name, ParseResult parsed) throws IOException {
    Typed typed =
        Typed.nothing()
            .fill("on", parsed.matchedOptionValue(RecordSpecs.ON, ""))
            .fill("certainty", certainty(parsed));
    boolean isNew = parsed.hasMatchedOption(RecordSpecs.NEW);
    store.change(
        ledger -> {
          Female her = isNew ? added(ledger, name) : female(ledger, name);
          Cycle before = Seasons.of(ledger, her).last();
          String zone =
              before == null ? ZoneId.systemDefault().getId() : Documents.zone(before).getId();
          typed.fill("zone", parsed.matchedOptionValue(RecordSpecs.ZONE, zone));
          Node.Members said = SeasonForm.read(typed, null, TEXTS);
          if (said == null) {
            throw unfit(typed);
          }
          return Recording.of(hand, ledger).addSeason(her, said, null);
        });
    return done("Her season is begun. Next: tiderule enter " + name + " VALUE UNIT");
  }

  private static String certainty(ParseResult parsed) {
    if (!parsed.hasMatchedOption(RecordSpecs.ON)) {
      return "unknown";
    }
    return parsed.hasMatchedOption(RecordSpecs.ESTIMATED) ? "estimated" : "seen";
  }

  private Female added(Ledger ledger, String name) {
    if (!named(ledger, name).isEmpty()) {
      throw new RecordCommands.Unusable("There is a female " + name + " already.");
    }
    return Recording.of(hand, ledger)
        .addFemale(new Node.Members(Map.of("name", new Node.Text(name))));
  }

  /**
   * @param said what was found: a word for it, unless it is a progesterone value, and the result
   * @throws IOException if something cannot be written
   */
  int enter(String name, List<String> said, ParseResult parsed) throws IOException {
    List<String> words = new ArrayList<>(said);
    String word = words.get(0).toLowerCase(Locale.ROOT);
    List<String> meant = RESULTS.get(word);
    if (meant == null) {
      if (!word.matches("[<>]?\\s*\\d.*")) {
        throw new RecordCommands.Unusable(
            "There is no result \"" + word + "\"; it can be a number, " + offered() + ".");
      }
      meant = List.of("progesterone", "value");
    } else {
      words.remove(0);
    }
    String kind = meant.get(0);
    String field = meant.get(1);
    Typed typed = typed(field, words, parsed);
    store.change(
        ledger -> {
          Known.Season season = season(ledger, name);
          ZoneId zone = Documents.zone(season.cycle());
          Instant moment = season.cycle().moment(hand.now());
          String at = parsed.matchedOptionValue(RecordSpecs.AT, "").replace(' ', 'T');
          typed.fill("at", at.isEmpty() ? LocalTimes.shown(moment, zone) : at);
          Node.Members observation =
              ObservationForm.of(kind, zone, TEXTS)
                  .read(
                      ObservationForm.freeIds(kind, ledger.entries().ids(season.cycle().key()), 1)
                          .get(0),
                      typed,
                      moment);
          if (observation == null) {
            throw unfit(typed);
          }
          return Recording.of(hand, ledger).add(season, observation);
        });
    return plan(name, parsed);
  }

  private static Typed typed(String field, List<String> words, ParseResult parsed) {
    Typed typed = Typed.nothing();
    boolean unknown = !words.isEmpty() && words.get(words.size() - 1).equals(RecordSpecs.NO_UNIT);
    List<String> value = unknown ? words.subList(0, words.size() - 1) : words;
    typed.fill(field, String.join(field.equals("value") ? " " : "-", value));
    if (unknown) {
      typed.fill("unit", "not-stated");
    }
    typed
        .fill("present", field.equals("sign") ? "yes" : "")
        .fill("method", parsed.matchedOptionValue(RecordSpecs.METHOD, ""))
        .fill("laboratory", parsed.matchedOptionValue(RecordSpecs.LABORATORY, ""));
    return typed;
  }

  private static String offered() {
    return String.join(", ", RESULTS.keySet().stream().sorted().toList());
  }

  /**
   * Prints the answer for now, and keeps it as what people were told.
   *
   * @throws IOException if it cannot be written
   */
  int plan(String name, ParseResult parsed) throws IOException {
    Standing.Held held =
        store.read(
            ledger -> {
              Known.Season season = season(ledger, name);
              return Standing.Held.of(ledger, season.female(), season.cycle());
            });
    Standing standing = Standing.of(held, hand.now(), engine.get().reason());
    Told told = standing.told();
    if (standing.kept() == null && hand.person().mayEnter(held.female())) {
      store.change(
          ledger ->
              Recording.of(hand, ledger)
                  .keep(
                      new Known.Season(held.female(), held.cycle()),
                      standing.file(),
                      told.advice(),
                      AdviceJson.text(told.advice(), Layout.ONE_LINE)));
    }
    new Output(streams.out())
        .print(
            parsed.hasMatchedOption(Specs.JSON)
                ? AdviceJson.text(told.advice(), Layout.INDENTED)
                : parsed.hasMatchedOption(Specs.FULL)
                    ? AdviceReport.text(told.cycle(), told.advice())
                    : FirstScreen.text(told.cycle(), told.advice()));
    return ExitStatus.DONE;
  }

  /** Shows what a laboratory's table adds to her season, and adds it. */
  int laboratory(ParseResult parsed) throws IOException {
    return new LaboratoryCommand(streams)
        .run(
            new Given(parsed.matchedPositionalValue(0, Given.STANDARD_INPUT)),
            parsed.matchedOptionValue(ExchangeSpecs.COLUMNS, ""),
            () -> into(parsed.matchedOptionValue(ExchangeSpecs.INTO, "")),
            parsed.hasMatchedOption(ExchangeSpecs.SAVE));
  }

  /** Shows what FHIR Observations add to her season, and adds it. */
  int take(ParseResult parsed) throws IOException {
    return new FhirCommand(streams)
        .take(
            new Given(parsed.matchedPositionalValue(0, Given.STANDARD_INPUT)),
            () -> into(parsed.matchedOptionValue(ExchangeSpecs.INTO, "")),
            parsed.matchedOptionValue(ExchangeSpecs.SUBJECT, null),
            parsed.hasMatchedOption(ExchangeSpecs.SAVE));
  }

  /** Prints the results of her season as a Bundle. */
  int bundle(String name) throws IOException {
    new Output(streams.out())
        .print(
            store.read(
                ledger -> SeasonBundle.text(hand, ledger, season(ledger, name), Layout.INDENTED)));
    return ExitStatus.DONE;
  }

  private Into into(String name) {
    return store.read(
        ledger -> {
          Known.Season season = season(ledger, name);
          return new OfRecord(
              store,
              hand,
              season,
              CycleCheck.season(hand, ledger, season),
              ledger.entries().ids(season.cycle().key()),
              "the record of " + name);
        });
  }

  /** Shares the services of a stud among females of the record. */
  int stud(List<String> names, List<Instant> services, boolean json) throws IOException {
    Map<String, CycleRecord> cycles = new LinkedHashMap<>();
    for (String name : names) {
      CycleRecord cycle =
          store.read(
              ledger -> {
                Known.Season season = season(ledger, name);
                return read(
                    Standing.Held.of(ledger, season.female(), season.cycle())
                        .file(season.cycle().moment(hand.now())));
              });
      if (cycles.put(name, cycle) != null) {
        throw new RecordCommands.Unusable("The female " + name + " is named twice.");
      }
    }
    return new StudCommand(streams, engine, json).run(cycles, services);
  }

  private static CycleRecord read(String file) {
    if (CycleText.read(file) instanceof Reading.Read read) {
      return read.cycle();
    }
    throw new IllegalStateException("the record holds a season that is no cycle file");
  }

  private Known.Season season(Ledger ledger, String name) {
    Female her = female(ledger, name);
    Cycle last = Seasons.of(ledger, her).last();
    if (last == null) {
      throw new RecordCommands.Unusable(
          name + " has no season yet: tiderule begin " + name + " --on DATE");
    }
    return new Known.Season(her, last);
  }

  private Female female(Ledger ledger, String name) {
    List<Female> found = named(ledger, name);
    if (found.size() == 1) {
      return found.get(0);
    }
    if (found.size() > 1) {
      throw new RecordCommands.Unusable(
          "Several females are called "
              + name
              + "; say which by her id: "
              + String.join(", ", found.stream().map(Female::handle).toList())
              + ".");
    }
    List<String> names = own(ledger).stream().map(her -> Documents.name(her, TEXTS)).toList();
    String near =
        NearMiss.of(name, names)
            .map(one -> "; maybe " + one + "?")
            .orElse("; tiderule begin " + name + " --new adds her.");
    throw new RecordCommands.Unusable("There is no female " + name + near);
  }

  private List<Female> named(Ledger ledger, String name) {
    return own(ledger).stream()
        .filter(
            her ->
                her.handle().equals(name)
                    || Documents.name(her, TEXTS).equalsIgnoreCase(name.strip()))
        .toList();
  }

  private List<Female> own(Ledger ledger) {
    List<Female> all = new ArrayList<>();
    @Nullable String after = Page.Wanted.FIRST.after();
    while (after != null) {
      Page<Female> page =
          ledger
              .females()
              .seenBy(
                  hand.person().key(), false, new Page.Wanted(after, Page.Wanted.FIRST.limit()));
      all.addAll(page.items());
      after = page.next();
    }
    return all;
  }

  private static RecordCommands.Unusable unfit(Typed typed) {
    return new RecordCommands.Unusable(
        String.join("\n", typed.faults().stream().map(Typed.Fault::text).toList()));
  }

  private int done(String words) throws IOException {
    new Output(streams.err()).print(words + "\n");
    return ExitStatus.DONE;
  }
}
