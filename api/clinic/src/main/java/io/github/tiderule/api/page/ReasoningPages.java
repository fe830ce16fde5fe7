package io.github.tiderule.api.page;

import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.access.Role;
import io.github.tiderule.api.page.form.Typed;
import io.github.tiderule.api.page.frame.Forms;
import io.github.tiderule.api.page.frame.Frame;
import io.github.tiderule.api.page.frame.Templates;
import io.github.tiderule.api.page.frame.Who;
import io.github.tiderule.api.page.plan.CurveView;
import io.github.tiderule.api.page.plan.Kept;
import io.github.tiderule.api.page.plan.Signatures;
import io.github.tiderule.api.page.plan.Standing;
import io.github.tiderule.api.page.reasoning.Argued;
import io.github.tiderule.api.page.reasoning.Day;
import io.github.tiderule.api.page.reasoning.Filter;
import io.github.tiderule.api.record.EarlierSeasons;
import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.Review;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.service.Known;
import io.github.tiderule.api.service.Recording;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.Verdict;
import io.github.tiderule.engine.validation.Legibility;
import io.github.tiderule.format.cycle.CycleText;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.json.AdviceJson;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.rules.conclusion.care.CautionLevel;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The reasoning behind a plan that was given, and what a vet signs about it. */
public final class ReasoningPages {

  private static final String OF_SEASON = SeasonPages.ONE + "/reasoning";
  private static final String ONE = "/advice/{advice}";
  private static final Set<String> OPEN_STAGES = Set.of("findings", "timeline", "days");
  private static final int UNFIT = 422;
  private static final int LONGEST_NOTE = 2000;
  private static final int LONGEST_NAME = 120;

  private ReasoningPages() {}

  /**
   * The page.
   *
   * @param advice key of the plan
   * @param asOf the moment it was given for, in words
   * @param isLast whether no later plan of the season was given
   * @param isStale whether it should have been asked for again by now
   * @param recordChanged whether something was entered or changed since
   * @param sameAnswer whether the engine and rules of today answer the same; where not, what is
   *     shown is their reasoning and not the one the plan was given by
   * @param mayReview whether who looks may sign
   * @param namesVet whether a vet's name is to be typed, since nobody signs in here
   * @param curve absent where timing is not talked of, or a part of the argument is asked for
   * @param open whether everything folded is to be shown
   */
  public record Shown(
      Frame frame,
      Who who,
      String advice,
      String asOf,
      boolean isLast,
      boolean isStale,
      boolean recordChanged,
      boolean sameAnswer,
      List<Signatures.Signed> signed,
      boolean mayReview,
      boolean namesVet,
      Typed typed,
      Argued argued,
      @Nullable CurveView curve,
      boolean open) {

    /** The path of the page. */
    public String path() {
      return "/advice/" + advice;
    }

    /** Whether everything is shown: a part that was asked for is not folded away. */
    public boolean unfolds() {
      return open || !argued.filter().isEmpty();
    }

    /** Whether a stage is shown: what was found, when she ovulates and on which days to breed. */
    public boolean opens(String stage) {
      return unfolds() || OPEN_STAGES.contains(stage);
    }

    /** Whether a day is shown with its reasons: one she may be bred on. */
    public boolean opens(Day day) {
      return unfolds() || day.planned() || !day.verdict().equals(Verdict.AVOID.word());
    }

    /** What was signed about this plan, or about the others of the season. */
    public List<Signatures.Signed> signed(boolean ofThis) {
      return signed.stream().filter(one -> one.ofShown() == ofThis).toList();
    }
  }

  /** The page where no plan was given yet. */
  public record None(Frame frame, Who who) {}

  /** What the record holds of a plan. */
  private record Held(
      Known.Given given, boolean isLast, String now, List<Signatures.Signed> signed) {

    static Held of(Call call, Ledger ledger, Frame frame) {
      Known.Given given = new Known(call, ledger).advice();
      String key = given.advice().key();
      String season = given.cycle().key();
      return new Held(
          given,
          ledger.advices().latest(season, 1).get(0).key().equals(key),
          EarlierSeasons.of(ledger, given.female())
              .file(given.advice().asOf(), given.cycle(), ledger.entries().current(season)),
          new Signatures(ledger, frame.words(), Who.of(call, given.female(), given.cycle()).zone())
              .of(season, key));
    }
  }

  static List<Route> all() {
    return List.of(
        Route.page(Route.Method.GET, OF_SEASON, Route.Need.ANYBODY, ReasoningPages::last),
        Route.page(Route.Method.GET, ONE, Route.Need.ANYBODY, ReasoningPages::show),
        Route.page(Route.Method.POST, ONE, Route.Need.WRITER, ReasoningPages::sign));
  }

  private static Answer last(Call call) {
    Keeping.looked(call, SeasonPages.held(call));
    return call.read(
        ledger -> {
          Known.Season season = new Known(call, ledger).season();
          List<GivenAdvice> given = ledger.advices().latest(season.cycle().key(), 1);
          if (!given.isEmpty()) {
            return Answer.seeOther("/advice/" + given.get(0).key());
          }
          Who who = Who.of(call, season.female(), season.cycle());
          Frame frame = Frame.of(call, "").titled("reasoning.title", who.name());
          return Templates.page("reasoning-none", new None(frame, who));
        });
  }

  private static Answer show(Call call) {
    return page(call, 200, Typed.nothing());
  }

  private static Answer page(Call call, int status, Typed typed) {
    Frame untitled = Frame.of(call, "");
    Held held = call.read(ledger -> Held.of(call, ledger, untitled));
    GivenAdvice given = held.given().advice();
    Who who = Who.of(call, held.given().female(), held.given().cycle());
    Frame frame = untitled.titled("reasoning.title", who.name());
    CycleRecord cycle = cycle(given);
    Reasoning reasoning = call.environment().reason().apply(cycle);
    OffsetDateTime asOf = reasoning.advice().asOf();
    Filter filter = Filter.of(call::query);
    Argued argued =
        Argued.of(
            cycle,
            reasoning,
            call.environment().rules().get().sources(),
            filter,
            frame.texts(),
            frame.words());
    return Templates.page(
        status,
        "reasoning",
        new Shown(
            frame,
            who,
            given.key(),
            frame.words().moment(asOf),
            held.isLast(),
            Kept.validUntil(given).toInstant().isBefore(call.now()),
            !held.now().equals(given.cycleFile()),
            AdviceJson.text(reasoning.advice(), Layout.ONE_LINE).equals(given.answer()),
            held.signed(),
            mayReview(call.person()),
            call.person().isLocal(),
            typed,
            argued,
            hasCurve(reasoning.advice(), filter)
                ? CurveView.of(
                    new Standing.Answered(cycle, reasoning), Telling.toVet(cycle, frame.words()))
                : null,
            call.query("open").isPresent()));
  }

  /** Where a caution ends all talk of timing, nothing is drawn either. */
  private static boolean hasCurve(Advice advice, Filter filter) {
    return filter.isEmpty()
        && advice.cautions().stream().noneMatch(caution -> caution.level() == CautionLevel.STOP);
  }

  private static CycleRecord cycle(GivenAdvice given) {
    if (CycleText.read(given.cycleFile()) instanceof Reading.Read read) {
      return read.cycle();
    }
    throw new IllegalStateException("the cycle file of advice " + given.key() + " is refused");
  }

  /** Vets; and whoever uses a record nobody signs in to, for the vet who stands beside. */
  private static boolean mayReview(Person person) {
    return person.role() == Role.VET || person.isLocal();
  }

  private static Answer sign(Call call) {
    call.read(ledger -> new Known(call, ledger).advice());
    Texts texts = Texts.ofPages(Locale.ROOT);
    if (!mayReview(call.person())) {
      throw Refusal.notAllowed(texts.say("refused.vet"));
    }
    Typed typed = Typed.of(call.form());
    // lines are joined: what is kept is one paragraph
    String name = call.person().isLocal() ? typed.value("vet").replaceAll("\\s+", " ") : null;
    if (name != null) {
      if (name.isEmpty()) {
        typed.refuse("vet", texts.say("fault.vet-missing"));
      } else {
        refuseUnfit(typed, "vet", name, LONGEST_NAME, texts);
      }
    }
    boolean agreed = typed.value("verdict").equals(Review.Verdict.AGREED.word());
    if (!agreed && !typed.value("verdict").equals(Review.Verdict.DISAGREED.word())) {
      typed.refuse("verdict", texts.say("fault.verdict"));
    }
    String note = typed.value("note").replaceAll("\\s+", " ");
    if (note.isEmpty() && !agreed) {
      typed.refuse("note", texts.say("fault.why"));
    } else {
      refuseUnfit(typed, "note", note, LONGEST_NOTE, texts);
    }
    if (!typed.isGood()) {
      return page(call, UNFIT, typed);
    }
    return Forms.save(
        call,
        typed,
        ledger -> {
          Known.Given given = new Known(call, ledger).advice();
          Recording.of(call, ledger)
              .review(
                  given,
                  agreed ? Review.Verdict.AGREED : Review.Verdict.DISAGREED,
                  note.isEmpty() ? null : note,
                  name);
          return Answer.seeOther("/advice/" + given.advice().key() + "?done=signed");
        },
        ledger ->
            Answer.seeOther(
                "/advice/" + new Known(call, ledger).advice().advice().key() + "?done=sign-again"));
  }

  private static void refuseUnfit(
      Typed typed, String field, String written, int longest, Texts texts) {
    if (written.codePointCount(0, written.length()) > longest) {
      typed.refuse(field, texts.say("fault.note-long", longest));
    } else if (!written.codePoints().allMatch(Legibility::isSafe)) {
      typed.refuse(field, texts.say("problem.illegal-character"));
    }
  }
}
