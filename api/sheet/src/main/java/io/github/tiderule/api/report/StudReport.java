package io.github.tiderule.api.report;

import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.SectionKind;
import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.advice.StudPlan;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;

/**
 * How the services of one stud are shared among several females, for the stud's keeper. Plain text
 * of at most 80 columns.
 */
public final class StudReport {

  private static final Texts TEXTS = Texts.ofReports();

  private static final double HARDLY = 0.005;

  private final StudPlan plan;
  private final ZoneId zone;
  private final Telling telling = Telling.onTerminal();
  private final Page page = new Page(telling);

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
    page.line(TEXTS.count("stud.title", plan.services().size()));
    page.line(TEXTS.say("stud.zone", zone));
    page.heading(SectionKind.SERVICES);
    for (StudPlan.Service service : plan.services()) {
      String female = service.female();
      page.hanging(
          2,
          "-",
          female == null
              ? TEXTS.say("stud.reserve", moment(service.at()))
              : TEXTS.say(
                  "stud.given", moment(service.at()), female, Shares.inHundred(service.adds())));
    }
    page.heading(SectionKind.FEMALES);
    plan.parts().forEach(this::part);
    if (!plan.leftOut().isEmpty()) {
      page.heading(SectionKind.LEFT_OUT);
      plan.leftOut()
          .forEach(
              left ->
                  page.hanging(2, "-", left.female() + ": " + telling.sayWithin(left.instead())));
    }
    page.gap();
    page.line(TEXTS.say("stud.foot") + " " + TEXTS.say("stamp.no-vet"));
    return page.toString();
  }

  private void part(StudPlan.Part part) {
    String when =
        part.at().isEmpty()
            ? TEXTS.say("stud.no-service")
            : String.join(TEXTS.say("report.and"), part.at().stream().map(this::moment).toList());
    page.hanging(
        2,
        "-",
        TEXTS.say("stud.part", part.female(), when, Shares.inHundred(part.share()), slack(part)));
    List<String> alone = part.alone().stream().map(Shares::number).toList();
    page.indented(4, TEXTS.say("stud.alone", String.join(", ", alone)));
  }

  private static String slack(StudPlan.Part part) {
    return part.lostByWaiting() < HARDLY
        ? TEXTS.say("stud.slack")
        : TEXTS.say("stud.loses", Shares.inHundred(part.lostByWaiting()));
  }

  private String moment(Instant at) {
    OffsetDateTime local = at.atZone(zone).toOffsetDateTime();
    return telling.words().moment(local);
  }
}
