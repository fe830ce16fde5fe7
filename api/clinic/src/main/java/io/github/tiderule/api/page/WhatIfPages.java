package io.github.tiderule.api.page;

import io.github.tiderule.api.page.form.ObservationForm;
import io.github.tiderule.api.page.form.Typed;
import io.github.tiderule.api.page.frame.Frame;
import io.github.tiderule.api.page.frame.Templates;
import io.github.tiderule.api.page.frame.Who;
import io.github.tiderule.api.page.plan.Documents;
import io.github.tiderule.api.page.plan.Observed;
import io.github.tiderule.api.page.plan.PlanView;
import io.github.tiderule.api.page.plan.Remembered;
import io.github.tiderule.api.page.plan.Standing;
import io.github.tiderule.api.record.SeasonText;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.change.Told;
import io.github.tiderule.format.cycle.CycleText;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeText;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What the plan would be with a value nobody has measured. Nothing of it is saved. */
public final class WhatIfPages {

  private static final String PATH = SeasonPages.ONE + "/what-if";
  private static final String PRETEND = "pretend";
  private static final Duration AHEAD = Duration.ofDays(30);
  private static final int UNFIT = 422;

  private WhatIfPages() {}

  /**
   * The page.
   *
   * @param pretend the value pretended; absent before one is typed
   * @param plan what the plan would be; absent before that
   */
  public record WhatIf(
      Frame frame,
      Who who,
      Typed typed,
      @Nullable String lastUnit,
      @Nullable String pretend,
      @Nullable PlanView plan) {}

  static List<Route> all() {
    return List.of(Route.page(Route.Method.GET, PATH, Route.Need.ANYBODY, WhatIfPages::show));
  }

  private static Answer show(Call call) {
    Standing.Held held = SeasonPages.held(call);
    Who who = Who.of(call, held.female(), held.cycle());
    Frame frame = Frame.of(call, "").titled("whatif.title", who.name());
    Remembered remembered = Remembered.of(held.current());
    Map<String, List<String>> asked = call.queries();
    if (!asked.containsKey("value")) {
      return Templates.page(
          "what-if", new WhatIf(frame, who, remembered.form(), remembered.unit(), null, null));
    }
    Typed typed = Typed.of(asked);
    Texts texts = Texts.ofPages(Locale.ROOT);
    Instant moment = held.cycle().moment(call.now());
    Node.Members value =
        ObservationForm.of("progesterone", who.zone(), texts)
            .read(PRETEND, typed, moment.plus(AHEAD));
    PlanView plan = value == null ? null : plan(call, held, value, moment, typed, frame);
    if (value == null || plan == null) {
      return Templates.page(
          UNFIT, "what-if", new WhatIf(frame, who, typed, remembered.unit(), null, null));
    }
    String pretend =
        Observed.words(value, frame.texts(), frame.words())
            + ", "
            + frame.words().shortMoment(Observed.at(value, who.zone()));
    return Templates.page(
        "what-if", new WhatIf(frame, who, typed, remembered.unit(), pretend, plan));
  }

  private static @Nullable PlanView plan(
      Call call, Standing.Held held, Node.Members value, Instant moment, Typed typed, Frame frame) {
    Instant drawn = Observed.at(value, Documents.zone(held.cycle())).toInstant();
    Instant then = drawn.isAfter(moment) ? drawn : moment;
    List<String> observations = new ArrayList<>(SeasonText.documents(held.current()));
    observations.add(NodeText.of(value));
    String file = held.earlier().fileWith(then, held.cycle(), observations);
    if (CycleText.read(file) instanceof Reading.Refused refused) {
      typed.refuse(refused.problems(), frame.texts());
      return null;
    }
    Standing.Answered pretend = Standing.answered(file, call.environment().reason());
    Told now = Standing.answered(held.file(moment), call.environment().reason()).told();
    return PlanView.of(pretend, now, frame.texts(), frame.words());
  }
}
