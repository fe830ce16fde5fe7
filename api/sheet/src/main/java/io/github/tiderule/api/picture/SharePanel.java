package io.github.tiderule.api.picture;

import io.github.tiderule.api.picture.svg.Colour;
import io.github.tiderule.api.picture.svg.Svg;
import io.github.tiderule.api.report.text.BestDays;
import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.Verdict;
import java.time.LocalDate;
import java.util.List;

/**
 * The share of eggs that one breeding on each day would meet: a bar and a number, full where the
 * plan breeds, hollow where the day is to be avoided.
 */
final class SharePanel {

  private static final Texts TEXTS = Texts.ofReports();

  private static final double BARS = 3.2;
  private static final double NUMBERS = 1.3;
  private static final double GAP = 0.1;
  private static final int MOST = 99;

  private final Frame frame;
  private final List<BreedingDay> days;

  SharePanel(Frame frame) {
    this.frame = frame;
    this.days =
        BestDays.of(frame.input().advice(), BestDays.MOST).stream()
            .filter(day -> frame.times().days().contains(day.day()))
            .toList();
  }

  /** The days shown, in order. */
  List<BreedingDay> days() {
    return days;
  }

  private boolean isPlanned(BreedingDay day) {
    return BestDays.isPlanned(frame.input().advice(), day);
  }

  double height() {
    return days.isEmpty() ? 0 : (BARS + NUMBERS) * frame.letter();
  }

  void draw(Svg svg, double top) {
    if (days.isEmpty()) {
      return;
    }
    double letter = frame.letter();
    double bottom = top + height();
    svg.line(frame.left(), top, frame.right(), top, Colour.FRAME, 1, "");
    frame.rowName(svg, TEXTS.say("curve.eggs"), bottom - 1.6 * letter);
    frame.rowName(svg, TEXTS.say("curve.eggs.of"), bottom - 0.5 * letter);
    days.forEach(day -> draw(svg, day, bottom));
    days.stream().filter(this::isPlanned).forEach(day -> number(svg, day, bottom));
    days.stream().filter(day -> !isPlanned(day)).forEach(day -> number(svg, day, bottom));
  }

  private void draw(Svg svg, BreedingDay day, double bottom) {
    double left = frame.times().x(day.day());
    double broad = frame.times().x(day.day().plusDays(1)) - left;
    double tall = tall(day);
    boolean planned = isPlanned(day);
    boolean avoid = !planned && day.verdict() == Verdict.AVOID;
    svg.open("g").text("title", title(day));
    svg.empty(
        "rect",
        "x",
        left + GAP * broad,
        "y",
        bottom - tall,
        "width",
        broad * (1 - 2 * GAP),
        "height",
        tall,
        "fill",
        planned ? Colour.BREED : avoid ? Colour.PAPER : Colour.SHARE,
        "stroke",
        avoid ? Colour.FRAME : Colour.BREED,
        "stroke-width",
        1,
        "stroke-dasharray",
        avoid ? "3 2" : "none");
    svg.close("g");
  }

  /** Numbers find room where they can, those of the plan first. */
  private void number(Svg svg, BreedingDay day, double bottom) {
    double letter = frame.letter();
    double middle = (frame.times().x(day.day()) + frame.times().x(day.day().plusDays(1))) / 2;
    frame
        .labels()
        .write(
            svg,
            number(day),
            letter,
            day.verdict() == Verdict.AVOID ? Colour.QUIET : Colour.INK,
            middle,
            bottom - tall(day) - 0.3 * letter);
  }

  private double tall(BreedingDay day) {
    return Math.max(1, BARS * frame.letter() * day.eggShare().mean());
  }

  private static String number(BreedingDay day) {
    return Long.toString(Math.min(MOST, Math.round(100 * day.eggShare().mean())));
  }

  /** A day in words, as in {@code Thu 14 Jan, 08:00–20:00: 91 in 100 eggs}. */
  String title(BreedingDay day) {
    return TEXTS.say(
        isPlanned(day) ? "curve.share.planned" : "curve.share",
        frame.input().words().shortDay(day.day()),
        frame.input().words().window(day.from(), day.to()),
        Shares.number(day.eggShare().mean()));
  }

  /** What a link to a day is called in the page that holds the picture. */
  static String place(LocalDate day) {
    return "day-" + day;
  }

  /** Lays a link over each day, to where the page says more of it. */
  void link(Svg svg, double top, double bottom) {
    for (BreedingDay day : days) {
      double left = frame.times().x(day.day());
      svg.open("a", "href", '#' + place(day.day()), "aria-label", title(day));
      svg.empty(
          "rect",
          "x",
          left,
          "y",
          top,
          "width",
          frame.times().x(day.day().plusDays(1)) - left,
          "height",
          bottom - top,
          "fill",
          "transparent");
      svg.close("a");
    }
  }
}
