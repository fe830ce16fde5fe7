package io.github.tiderule.api.picture;

import io.github.tiderule.api.picture.svg.Colour;
import io.github.tiderule.api.picture.svg.Labels;
import io.github.tiderule.api.picture.svg.Svg;
import io.github.tiderule.api.words.Texts;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;

/** Local days along the foot: weekday, date and day of the season, first blood being day 1. */
final class DateAxis {

  private static final Texts TEXTS = Texts.ofReports();

  private static final double LINE = 1.25;

  private final Frame frame;
  private final int step;

  DateAxis(Frame frame) {
    this.frame = frame;
    double perDay = (frame.right() - frame.left()) / frame.times().days().size();
    this.step = (int) Math.ceil(Labels.breadth("Wed", frame.letter()) * 1.2 / perDay);
  }

  private LocalDate firstBlood() {
    LocalDate on = frame.input().cycle().firstBlood().on();
    return on == null ? LocalDate.MIN : on;
  }

  private boolean counts() {
    return !firstBlood().equals(LocalDate.MIN)
        && Math.abs(ChronoUnit.DAYS.between(firstBlood(), frame.times().end())) < 1000;
  }

  double height() {
    return ((counts() ? 4 : 3) * LINE + 0.5) * frame.letter();
  }

  /** Lines at the beginning of each day. */
  void grid(Svg svg, double top, double bottom) {
    for (LocalDate day : frame.times().days()) {
      double x = frame.times().x(day);
      svg.line(x, top, x, bottom, Colour.GRID, 1, "");
    }
  }

  void draw(Svg svg, double top) {
    double letter = frame.letter();
    List<LocalDate> days = frame.times().days();
    svg.line(frame.left(), top, frame.right(), top, Colour.FRAME, 1, "");
    for (int i = 0; i < days.size(); i++) {
      LocalDate day = days.get(i);
      double x = frame.times().x(day);
      svg.line(x, top, x, top + 4, Colour.FRAME, 1, "");
      if (i % step != 0) {
        continue;
      }
      double middle = (x + frame.times().x(day.plusDays(1))) / 2;
      words(svg, middle, line(top, 1), frame.input().words().weekday(day));
      words(svg, middle, line(top, 2), Integer.toString(day.getDayOfMonth()));
      if (counts()) {
        words(
            svg,
            middle,
            line(top, 3),
            Long.toString(ChronoUnit.DAYS.between(firstBlood(), day) + 1));
      }
    }
    if (counts()) {
      svg.words(
          frame.left() - 5, line(top, 3), letter, "end", Colour.QUIET, TEXTS.say("curve.day-mark"));
    }
    words(svg, (frame.left() + frame.right()) / 2, line(top, counts() ? 4 : 3), caption());
  }

  private String caption() {
    LocalDate last = frame.times().end().minusDays(1);
    String from = frame.input().words().monthAndYear(frame.times().first());
    String to = frame.input().words().monthAndYear(last);
    return (from.equals(to) ? from : from + "–" + to)
        + (counts() ? TEXTS.say("curve.day-means") : "");
  }

  private double line(double top, int number) {
    return top + number * LINE * frame.letter() + 2;
  }

  private void words(Svg svg, double x, double y, String words) {
    svg.words(x, y, frame.letter(), "middle", Colour.QUIET, words);
  }
}
