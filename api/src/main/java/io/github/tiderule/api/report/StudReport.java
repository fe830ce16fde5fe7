package io.github.tiderule.api.report;

import io.github.tiderule.engine.days.StudPlan;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;

/**
 * How the services of one stud are shared among several females, for the stud's keeper. Plain text
 * of at most 80 columns.
 */
public final class StudReport {

  private static final double HARDLY = 0.005;

  private final StudPlan plan;
  private final ZoneId zone;
  private final Page page = new Page();

  private StudReport(StudPlan plan, ZoneId zone) {
    this.plan = plan;
    this.zone = zone;
  }

  /**
   * The report, each line ended by a line feed.
   *
   * @param zone the zone times are written in
   */
  public static String text(StudPlan plan, ZoneId zone) {
    return new StudReport(plan, zone).text();
  }

  private String text() {
    page.line("One stud, " + count(plan.services().size(), "service"));
    page.line("all times are for " + zone);
    page.heading("Who is given which service");
    for (StudPlan.Service service : plan.services()) {
      String female = service.female();
      page.hanging(
          2,
          "-",
          moment(service.at())
              + ": "
              + (female == null
                  ? "in reserve; it would add too little to any of them."
                  : female
                      + ". Without it she would miss "
                      + Shares.inHundred(service.adds())
                      + " of her eggs."));
    }
    page.heading("The females, least slack first");
    plan.parts().forEach(this::part);
    if (!plan.leftOut().isEmpty()) {
      page.heading("Not to be bred by these services");
      plan.leftOut().forEach(left -> page.hanging(2, "-", left.female() + ": " + left.instead()));
    }
    page.gap();
    page.line(
        "Every way of sharing was looked at; this one meets most eggs over all females together. Ask"
            + " again after each test. Never force a mating. Not a substitute for a vet; check your"
            + " own local rules.");
    return page.toString();
  }

  private void part(StudPlan.Part part) {
    String when =
        part.at().isEmpty()
            ? "no service; others need them more, or none suits her"
            : String.join(" and ", part.at().stream().map(this::moment).toList());
    page.hanging(
        2,
        "-",
        part.female()
            + ": "
            + when
            + ". Meets "
            + Shares.inHundred(part.share())
            + " of her eggs. "
            + slack(part));
    List<String> alone = part.alone().stream().map(Shares::number).toList();
    page.indented(4, "Each service on its own would meet " + String.join(", ", alone) + " in 100.");
  }

  private static String slack(StudPlan.Part part) {
    return part.lostByWaiting() < HARDLY
        ? "She loses hardly anything if the first goes to another."
        : "If the first goes to another she loses " + Shares.inHundred(part.lostByWaiting()) + ".";
  }

  private String moment(Instant at) {
    OffsetDateTime local = at.atZone(zone).toOffsetDateTime();
    return LocalWords.moment(local);
  }

  private static String count(int number, String what) {
    return number == 1 ? "1 " + what : number + " " + what + "s";
  }
}
