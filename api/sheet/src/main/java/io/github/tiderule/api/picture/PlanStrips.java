package io.github.tiderule.api.picture;

import io.github.tiderule.api.picture.svg.Colour;
import io.github.tiderule.api.picture.svg.Hatching;
import io.github.tiderule.api.picture.svg.Svg;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.Plan;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;

/** The clock windows of the plan as hatched strips, and now as a line, over the whole height. */
final class PlanStrips {

  private static final Texts TEXTS = Texts.ofReports();

  private static final double LEAST_BREADTH = 4;
  private static final double STEP = 5;

  private final Frame frame;

  PlanStrips(Frame frame) {
    this.frame = frame;
  }

  /** A breeding of the plan, with the clock window it lies in. */
  record Window(int number, Instant from, Instant to, OffsetDateTime best) {}

  static List<Window> windows(CurveInput input) {
    Plan plan = input.advice().breeding().plan();
    List<Window> windows = new ArrayList<>();
    if (plan != null) {
      for (OffsetDateTime at : plan.at()) {
        BreedingDay day =
            input.advice().breeding().days().stream()
                .filter(one -> !at.isBefore(one.from()) && !at.isAfter(one.to()))
                .findFirst()
                .orElse(null);
        windows.add(
            new Window(
                windows.size() + 1,
                (day == null ? at : day.from()).toInstant(),
                (day == null ? at : day.to()).toInstant(),
                at));
      }
    }
    return windows;
  }

  void draw(Svg svg, double top, double bottom) {
    for (Window window : windows(frame.input())) {
      double left = frame.times().within(window.from());
      double right = Math.max(frame.times().within(window.to()), left + LEAST_BREADTH);
      svg.open("g")
          .text(
              "title",
              TEXTS.say(
                  "curve.breeding", window.number(), frame.input().words().moment(window.best())))
          .empty(
              "rect",
              "x",
              left,
              "y",
              top,
              "width",
              right - left,
              "height",
              bottom - top,
              "fill",
              "none",
              "stroke",
              Colour.BREED,
              "stroke-width",
              1);
      Hatching.draw(svg, left, top, right, bottom, STEP, Colour.BREED);
      svg.close("g");
    }
  }

  /** The number of each breeding, above its strip. */
  void number(Svg svg, double top) {
    double letter = frame.letter();
    for (Window window : windows(frame.input())) {
      double middle = (frame.times().within(window.from()) + frame.times().within(window.to())) / 2;
      frame
          .labels()
          .write(
              svg,
              TEXTS.say("curve.breed", window.number()),
              letter,
              Colour.BREED,
              middle,
              top - 0.5 * letter,
              middle,
              top + 1.1 * letter,
              middle,
              top + 2.4 * letter);
    }
  }

  /** The moment the answer is for. */
  void now(Svg svg, double top, double bottom) {
    Instant now = frame.input().cycle().asOf();
    if (frame.times().holds(now)) {
      double x = frame.times().x(now);
      svg.line(x, top, x, bottom, Colour.NOW, 1.6, "6 3");
      double letter = frame.letter();
      frame
          .labels()
          .write(
              svg,
              TEXTS.say("curve.now"),
              letter,
              Colour.NOW,
              x,
              top - 0.5 * letter,
              x,
              top + 1.1 * letter,
              x,
              bottom - 0.6 * letter);
    }
  }
}
