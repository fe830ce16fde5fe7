package io.github.tiderule.api.record;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.cycle.CycleText;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeReader;
import io.github.tiderule.format.node.NodeText;
import io.github.tiderule.format.problem.Problems;
import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.EarlierKind;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.Outcome;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What the record itself knows of a female's seasons, for those that come after: first blood, the
 * shift of the smear, what became of it, and whether it came to nothing. It is put into the cycle
 * file that is answered, never into what people wrote.
 *
 * <p>Litters count themselves, where fewer were typed. What was typed into her {@code
 * earlierCycles} wins; a season of the record that stands there already only fills in what is
 * missing. Whatever would make the cycle file a refused one is left out.
 */
public final class EarlierSeasons {

  private static final String LIST = "earlierCycles";
  private static final String BLOOD = "firstBloodOn";
  private static final String SHIFT = "dioestrusOn";
  private static final String WHELPED = "whelpedOn";
  private static final String LITTER = "litterSize";
  private static final String LITTERS = "littersWhelped";
  private static final String PREGNANT = "pregnant";
  private static final String KIND = "kind";

  /** Typed from memory, a day may be this much off and still mean the same season. */
  private static final long SAME_SEASON_DAYS = 2;

  private static final String NOBODY = "{}";

  /** A season of hers as it was last found good, without her own document. */
  private record Season(String key, CycleRecord read) {

    @Nullable LocalDate firstBlood() {
      return read.firstBlood().on();
    }

    boolean isKnown() {
      return firstBlood() != null && read.firstBlood().certainty() != Certainty.UNKNOWN;
    }
  }

  private final Female female;
  private final List<Season> seasons;

  private EarlierSeasons(Female female, List<Season> seasons) {
    this.female = female;
    this.seasons = seasons;
  }

  /** Reads the seasons of a female. */
  public static EarlierSeasons of(Ledger ledger, Female female) {
    List<Season> seasons = new ArrayList<>();
    for (Cycle cycle : ledger.cycles().all(female.key())) {
      List<String> observations = SeasonText.documents(ledger.entries().current(cycle.key()));
      String file = CycleText.of(cycle.seenAt(), NOBODY, cycle.document(), observations);
      // a season that cannot be read any more tells the next one nothing
      if (CycleText.read(file) instanceof Reading.Read read) {
        seasons.add(new Season(cycle.key(), read.cycle()));
      }
    }
    seasons.sort(
        Comparator.comparing(Season::firstBlood, Comparator.nullsLast(Comparator.naturalOrder()))
            .thenComparing(Season::key));
    return new EarlierSeasons(female, List.copyOf(seasons));
  }

  /** The season as a cycle file to be answered, with the observations as they are now. */
  public String file(Instant asOf, Cycle cycle, List<Entry> current) {
    return fileWith(asOf, cycle, SeasonText.documents(current));
  }

  /**
   * The season as a cycle file to be answered.
   *
   * @param asOf the moment it is for; what happened later in an earlier season is not told
   * @param observations the observations, in their order
   */
  public String fileWith(Instant asOf, Cycle cycle, List<String> observations) {
    return CycleText.of(asOf, document(asOf, cycle), cycle.document(), observations);
  }

  private String document(Instant asOf, Cycle cycle) {
    Node.Members season = members(cycle.document());
    ZoneId zone = ZoneId.of(Objects.requireNonNull(season.text("zone"), "a season without zone"));
    LocalDate today = asOf.atZone(zone).toLocalDate();
    LocalDate begins = begins(cycle, season, zone, today);
    Node.Members her = members(female.document());
    Trial trial = new Trial(asOf, season);
    List<Node.Members> all = new ArrayList<>(her.objects(LIST));
    int typed = all.size();
    boolean changed = false;
    for (Season one : seasons) {
      LocalDate blood = one.firstBlood();
      if (one.key().equals(cycle.key())
          || !one.isKnown()
          || blood == null
          || !blood.isBefore(begins)
          || blood.isAfter(today)) {
        continue;
      }
      int same = same(all, blood);
      Node.Members known = same < 0 ? new Node.Members(Map.of()) : all.get(same);
      LocalDate last = today.isBefore(begins) ? today : begins.minusDays(1);
      Node.Members filled = trial.fill(known, told(one, blood, begins, last));
      if (same < 0 && filled.byKey().containsKey(BLOOD)) {
        all.add(filled);
        changed = true;
      } else if (same >= 0 && !filled.equals(known)) {
        all.set(same, filled);
        changed = true;
      }
    }
    long litters = litters(begins, cycle);
    String said = her.byKey().get(LITTERS) instanceof Node.Digits digits ? digits.written() : "0";
    boolean more = litters > Long.parseLong(said);
    if (!changed && !more) {
      return female.document();
    }
    Map<String, Node> fields = new LinkedHashMap<>(her.byKey());
    if (changed) {
      fields.put(LIST, new Node.Entries(List.copyOf(trial.fitting(all, typed))));
    }
    if (more) {
      fields.put(LITTERS, new Node.Digits(Long.toString(litters)));
    }
    return NodeText.of(new Node.Members(fields));
  }

  /** How many litters the record knows of before a season; those typed may be more. */
  private long litters(LocalDate begins, Cycle cycle) {
    return seasons.stream()
        .filter(one -> !one.key().equals(cycle.key()))
        .map(one -> one.read().outcome().whelpedOn())
        .filter(whelped -> whelped != null && whelped.isBefore(begins))
        .count();
  }

  /** The day a season began, or where nobody saw that, the day it was first looked at. */
  private LocalDate begins(Cycle cycle, Node.Members season, ZoneId zone, LocalDate today) {
    Node.@Nullable Members blood = season.members("firstBlood");
    @Nullable String on = blood == null ? null : blood.text("on");
    if (on != null) {
      return LocalDate.parse(on);
    }
    return seasons.stream()
        .filter(one -> one.key().equals(cycle.key()))
        .flatMap(one -> one.read().observations().stream())
        .map(observation -> observation.at().atZone(zone).toLocalDate())
        .min(Comparator.naturalOrder())
        .orElse(today);
  }

  /** The entry of the same season, the nearest; negative for none. */
  private static int same(List<Node.Members> all, LocalDate blood) {
    int same = -1;
    long nearest = SAME_SEASON_DAYS + 1;
    for (int i = 0; i < all.size(); i++) {
      @Nullable String typed = all.get(i).text(BLOOD);
      if (typed != null) {
        long apart = Math.abs(ChronoUnit.DAYS.between(LocalDate.parse(typed), blood));
        if (apart < nearest) {
          same = i;
          nearest = apart;
        }
      }
    }
    return same;
  }

  /**
   * What a season tells of itself.
   *
   * @param next first blood of the season that asks
   * @param last the last day that may be told of
   */
  private static Map<String, Node> told(
      Season season, LocalDate blood, LocalDate next, LocalDate last) {
    Map<String, Node> told = new LinkedHashMap<>();
    told.put(BLOOD, new Node.Text(blood.toString()));
    FirstBlood firstBlood = season.read().firstBlood();
    // the days from a first blood that was only estimated would be taken for exact ones
    boolean seen = firstBlood.certainty() == Certainty.SEEN;
    LocalDate shift = SmearShift.firstDay(season.read());
    if (seen && shift != null && !shift.isAfter(last)) {
      told.put(SHIFT, new Node.Text(shift.toString()));
    }
    Outcome outcome = season.read().outcome();
    LocalDate whelped = outcome.whelpedOn();
    if (whelped != null && whelped.isAfter(last)) {
      return told;
    }
    if (seen && whelped != null) {
      told.put(WHELPED, new Node.Text(whelped.toString()));
    }
    if (outcome.litterSize() != null) {
      told.put(LITTER, new Node.Digits(outcome.litterSize().toString()));
    }
    if (outcome.pregnant() != null) {
      told.put(PREGNANT, new Node.Flag(outcome.pregnant()));
    }
    EarlierKind kind = SeasonKind.of(season.read(), blood, next, last);
    if (kind != null) {
      told.put(KIND, new Node.Text(kind.word()));
    }
    return told;
  }

  private static Node.Members members(String document) {
    return (Node.Members) NodeReader.read(document, new Problems()).orElseThrow();
  }

  /** Asks the reader of cycle files whether it would take what is filled in. */
  private record Trial(Instant asOf, Node.Members season) {

    /** An entry with those fields it lacks that the reader takes. */
    Node.Members fill(Node.Members known, Map<String, Node> told) {
      Node.Members filled = known;
      boolean barren = known.byKey().get(PREGNANT) instanceof Node.Flag flag && !flag.value();
      for (Map.Entry<String, Node> one : told.entrySet()) {
        boolean contradicts = barren && one.getKey().equals(LITTER);
        if (isSaid(filled, one.getKey()) || contradicts) {
          continue;
        }
        Map<String, Node> fields = new LinkedHashMap<>(filled.byKey());
        fields.put(one.getKey(), one.getValue());
        Node.Members more = new Node.Members(fields);
        if (takes(List.of(more))) {
          filled = more;
        }
      }
      return filled;
    }

    private static boolean isSaid(Node.Members entry, String field) {
      Node said = entry.byKey().get(field);
      return said != null && !(said instanceof Node.Nothing);
    }

    /** In order of time, without the oldest of those added where the reader takes no more. */
    List<Node.Members> fitting(List<Node.Members> all, int typed) {
      List<Node.Members> fitting = new ArrayList<>(all);
      for (int added = all.size() - typed; added > 0 && !takes(fitting); added--) {
        fitting.remove(typed);
      }
      fitting.sort(Comparator.comparing(one -> Objects.requireNonNullElse(one.text(BLOOD), "")));
      return fitting;
    }

    private boolean takes(List<Node.Members> entries) {
      Map<String, Node> least = new LinkedHashMap<>();
      for (String field : List.of("zone", "firstBlood")) {
        least.put(field, Objects.requireNonNull(season.byKey().get(field), field));
      }
      Node.Members her = new Node.Members(Map.of(LIST, new Node.Entries(List.copyOf(entries))));
      return CycleText.read(
              CycleText.of(asOf, NodeText.of(her), NodeText.of(new Node.Members(least)), List.of()))
          instanceof Reading.Read;
    }
  }
}
