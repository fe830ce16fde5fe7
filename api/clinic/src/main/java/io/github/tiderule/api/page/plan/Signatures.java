package io.github.tiderule.api.page.plan;

import io.github.tiderule.api.access.People;
import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.Review;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.words.Words;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What vets signed about the plans of a season, last first. */
public final class Signatures {

  /** Older plans than this many are not looked through. */
  private static final int PLANS = 30;

  private final Ledger ledger;
  private final Words words;
  private final ZoneId zone;
  private final People people;

  /**
   * @param zone of the season
   */
  public Signatures(Ledger ledger, Words words, ZoneId zone) {
    this.ledger = ledger;
    this.words = words;
    this.zone = zone;
    this.people = People.of(ledger);
  }

  /**
   * What a vet signed.
   *
   * @param typed whether the name was typed on this machine, where nobody signs in
   * @param advice key of the plan it is about
   * @param planAt the moment that plan was for
   * @param ofShown whether it is about the plan that is shown beside it
   */
  public record Signed(
      String by,
      boolean typed,
      String at,
      boolean agreed,
      @Nullable String note,
      String advice,
      String planAt,
      boolean ofShown) {}

  /**
   * About all plans of a season.
   *
   * @param shown key of the plan that is shown; absent where it is not on file
   */
  public List<Signed> of(String season, @Nullable String shown) {
    List<Signed> all = new ArrayList<>();
    for (GivenAdvice given : ledger.advices().latest(season, PLANS)) {
      List<Review> reviews = ledger.advices().reviews(given.key(), Page.Wanted.FIRST).items();
      for (int i = reviews.size() - 1; i >= 0; i--) {
        all.add(signed(reviews.get(i), given, shown));
      }
    }
    return List.copyOf(all);
  }

  /**
   * What is worth showing beside a plan: what was signed about it, or else the last word about an
   * earlier one.
   */
  public List<Signed> beside(String season, @Nullable String shown) {
    List<Signed> all = of(season, shown);
    List<Signed> about = all.stream().filter(Signed::ofShown).toList();
    return about.isEmpty() ? all.stream().limit(1).toList() : about;
  }

  private Signed signed(Review review, GivenAdvice given, @Nullable String shown) {
    return new Signed(
        review.typedName() == null
            ? people.find(review.person()).map(Person::name).orElse("")
            : review.typedName(),
        review.typedName() != null,
        words.moment(review.at().atZone(zone).toOffsetDateTime()),
        review.verdict() == Review.Verdict.AGREED,
        review.note(),
        given.key(),
        words.moment(given.asOf().atZone(zone).toOffsetDateTime()),
        given.key().equals(shown));
  }
}
