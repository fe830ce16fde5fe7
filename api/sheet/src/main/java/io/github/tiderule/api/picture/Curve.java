package io.github.tiderule.api.picture;

import io.github.tiderule.api.picture.svg.Colour;
import io.github.tiderule.api.picture.svg.Svg;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import java.util.ArrayList;
import java.util.List;

/**
 * The curve of a season, from top to bottom: what its marks mean, progesterone on the log scale
 * with what is expected and planned, how likely LH peak and ovulation are, a row for each other
 * kind of observation, the share of eggs of each day, and the days.
 *
 * <p>Immutable. The same input gives the same picture.
 */
public final class Curve {

  private static final Texts TEXTS = Texts.ofReports();

  private static final String FONTS =
      "'Liberation Sans', Arial, Helvetica, 'DejaVu Sans', sans-serif";
  private static final double DENSITY = 5;

  private final CurveInput input;
  private final CurveSize size;
  private final Frame frame;

  private Curve(CurveInput input, CurveSize size) {
    this.input = input;
    this.size = size;
    this.frame = Frame.of(input, size);
  }

  /** A curve, laid out for a width. */
  public static Curve of(CurveInput input, CurveSize size) {
    return new Curve(input, size);
  }

  /** The title the picture has. */
  public String title() {
    return CurveWords.title(input);
  }

  /** The description the picture has: what it shows, for those who do not see it. */
  public String description() {
    return CurveWords.description(input, frame.times());
  }

  /** The numbers in it, and those that found no room: all observations in time order. */
  public List<CurveRow> rows() {
    return new CurveTable(input).rows();
  }

  /**
   * The picture, an {@code svg} element without an XML declaration, fit to stand within a page.
   *
   * @param name what ids within it begin with, so that several can stand in one page; letters only
   * @throws IllegalArgumentException if the name is something else
   */
  public String svg(String name) {
    return svg(name, false);
  }

  /**
   * The same with a link over each day it holds a share of, to the place {@code day-} and the date
   * of the page it stands in.
   *
   * @param name as for {@link #svg}
   * @throws IllegalArgumentException if the name is something else
   */
  public String linked(String name) {
    return svg(name, true);
  }

  private String svg(String name, boolean linked) {
    if (!name.matches("[A-Za-z]+")) {
      throw new IllegalArgumentException("not a name of letters: " + name);
    }
    Frame fresh = Frame.of(input, size);
    double letter = size.letter();
    ExpectedBand band = ExpectedBand.of(input, fresh.times());
    Svg head = new Svg();
    double top = new Legend(fresh, band).draw(head, 2) + 1.7 * letter;
    double bottom = top + size.levels();
    LevelScale levels = scale(fresh, band, bottom, top);

    Svg body = new Svg();
    DateAxis dates = new DateAxis(fresh);
    FindingRows rows = new FindingRows(fresh);
    SharePanel shares = new SharePanel(fresh);
    double densities = bottom + (input.posterior().isEmpty() ? 0 : DENSITY * letter);
    double found = densities + rows.height();
    double foot = found + shares.height();
    PlanStrips plan = new PlanStrips(fresh);
    dates.grid(body, top, foot);
    plan.draw(body, top, foot);
    levels.ticks(body, fresh, Unit.NG_PER_ML, true);
    levels.ticks(body, fresh, Unit.NMOL_PER_L, false);
    band.draw(body, fresh, levels);
    frameOf(body, fresh, top, bottom);
    plan.now(body, top, foot);
    plan.number(body, top);
    new LevelMarks(fresh, levels).draw(body);
    if (noLevel()) {
      fresh
          .labels()
          .write(
              body,
              TEXTS.say("curve.no-level"),
              letter,
              Colour.QUIET,
              size.width() / 2,
              (top + bottom) / 2);
    }
    input
        .posterior()
        .ifPresent(posterior -> new DensityPanel(fresh, posterior).draw(body, bottom, densities));
    rows.draw(body, densities);
    shares.draw(body, found);
    dates.draw(body, foot);
    double height = foot + dates.height();
    Svg links = new Svg();
    if (linked) {
      shares.link(links, found, height);
    }
    return whole(name, height, head.add(body), links, linked);
  }

  private boolean noLevel() {
    return input.all(Progesterone.class).isEmpty() && input.all(ProgesteroneBand.class).isEmpty();
  }

  private static void frameOf(Svg body, Frame frame, double top, double bottom) {
    body.empty(
        "rect",
        "x",
        frame.left(),
        "y",
        top,
        "width",
        frame.right() - frame.left(),
        "height",
        bottom - top,
        "fill",
        "none",
        "stroke",
        Colour.FRAME,
        "stroke-width",
        1);
  }

  private LevelScale scale(Frame shown, ExpectedBand band, double bottom, double top) {
    List<Double> all = new ArrayList<>(List.of(band.lowest(), band.highest()));
    for (Progesterone value : input.all(Progesterone.class)) {
      if (value.statedUnit() != null
          && value.value() > 0
          && !input.held(value.id())
          && shown.times().holds(value.at())) {
        all.add(value.ngPerMl());
      }
    }
    return LevelScale.holding(
        all.stream().mapToDouble(one -> one).filter(one -> one > 0).min().orElse(1),
        all.stream().mapToDouble(one -> one).filter(one -> one < 1e6).max().orElse(1),
        bottom,
        top);
  }

  private String whole(String name, double height, Svg drawing, Svg links, boolean linked) {
    Svg svg = new Svg();
    svg.drawing(
        size.width(),
        height,
        linked ? "group" : "img",
        name + "-title " + name + "-desc",
        "xml:lang",
        TEXTS.say("language"),
        "font-family",
        FONTS);
    svg.text("title", title(), "id", name + "-title");
    svg.text("desc", description(), "id", name + "-desc");
    svg.empty("rect", "width", size.width(), "height", height, "fill", Colour.PAPER);
    if (!linked) {
      return svg.add(drawing).close("svg").toString();
    }
    // what is written in it is told by its description; only the days are gone through
    svg.open("g", "aria-hidden", "true").add(drawing).close("g");
    return svg.add(links).close("svg").toString();
  }
}
