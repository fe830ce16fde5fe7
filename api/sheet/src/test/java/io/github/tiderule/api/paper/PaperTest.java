package io.github.tiderule.api.paper;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.oneOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.github.tiderule.api.report.InventedAdvice;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.CycleRefused;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.reasoning.TraceLine;
import io.github.tiderule.engine.validation.Legibility;
import io.github.tiderule.format.Nightly;
import io.github.tiderule.format.Seasons;
import io.github.tiderule.format.Seasons.Season;
import io.github.tiderule.rules.conclusion.care.CautionLevel;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.observation.Observation;
import java.io.IOException;
import java.util.List;
import java.util.Objects;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

class PaperTest {

  private static final Season DENSE =
      Seasons.resource("/io/github/tiderule/api/picture/dense-season.json");

  private static byte[] sheet(Season season, PaperSize paper) {
    return BreederSheet.pdf(season.cycle(), season.reasoning(), paper);
  }

  private static byte[] summary(Season season, PaperSize paper) {
    return ReferralSummary.pdf(
        season.cycle(), season.reasoning(), Seasons.engine().rules().sources(), paper);
  }

  private static String text(PDDocument document) throws IOException {
    return flat(new PDFTextStripper().getText(document));
  }

  /** Without spaces: where a line breaks is not the question. */
  private static String flat(String words) {
    return words.replaceAll("\\s+", "");
  }

  private static PaperSize paper(int number) {
    return number % 2 == 0 ? PaperSize.A4 : PaperSize.LETTER;
  }

  @Test
  void theBreedersSheetIsOnePageAndSaysWhatToDo() throws IOException {
    List<Season> seasons = Seasons.many();
    assertThat(seasons.size(), greaterThan(20));
    for (int i = 0; i < seasons.size(); i++) {
      Season season = seasons.get(i);
      // by night every sheet is set in both sizes, else in one of them, by turns
      if (Nightly.is()) {
        try (PDDocument other = Loader.loadPDF(sheet(season, paper(i + 1)))) {
          assertThat(season.name(), other.getNumberOfPages(), is(1));
        }
      }
      try (PDDocument document = Loader.loadPDF(sheet(season, paper(i)))) {
        assertThat(season.name(), document.getNumberOfPages(), is(1));
        String text = text(document);
        assertThat(
            season.name(),
            text,
            containsString(
                flat(
                    Telling.onPaper(season.cycle())
                        .say(season.reasoning().advice().action().headline()))));
        assertThat(season.name(), text, containsString(flat("When to call a vet")));
        assertThat(season.name(), text, containsString(flat("Not a substitute for a vet")));
        season.reasoning().advice().cautions().stream()
            .filter(caution -> caution.level() != CautionLevel.CARE)
            .forEach(
                caution ->
                    assertThat(
                        season.name(),
                        text,
                        containsString(flat(Telling.onPaper(season.cycle()).say(caution.text())))));
      }
    }
  }

  @Test
  void theSummaryIsThreePagesAtMostAndCitesEverySource() throws IOException {
    List<Season> seasons = Seasons.many();
    for (int i = 0; i < seasons.size(); i++) {
      Season season = seasons.get(i);
      try (PDDocument document = Loader.loadPDF(summary(season, paper(i + 1)))) {
        assertThat(season.name(), document.getNumberOfPages(), is(oneOf(2, 3)));
        String text = text(document);
        for (TraceLine line : season.reasoning().advice().reasoning().trace()) {
          for (String key : new TreeSet<>(line.sources())) {
            assertThat(season.name(), text, containsString(flat(key + ":")));
          }
        }
        assertThat(
            season.name(), text, containsString(flat(season.reasoning().advice().stamp().rules())));
        assertThat(season.name(), text, containsString("History"));
        for (Observation observation : season.cycle().observations()) {
          // the series is its legend: a key in the trace stands in it with what it is
          assertThat(
              season.name(),
              text.contains(flat(observation.id())) || text.contains(flat("earlier rows: see")),
              is(true));
        }
      }
    }
  }

  /** Whatever the plan says, the sheet for the day is a page of its own and leaves no step out. */
  @Test
  void theSheetForTheDayIsOnePageWithEveryStep() throws IOException {
    List<Season> seasons =
        Stream.concat(Seasons.many().stream(), Seasons.ofSemen().stream())
            .filter(season -> DaySheet.isIn(season.reasoning().advice()))
            .toList();
    assertThat(seasons.size(), greaterThan(5));
    for (Season season : seasons) {
      Advice advice = season.reasoning().advice();
      for (PaperSize paper : PaperSize.values()) {
        try (PDDocument document = Loader.loadPDF(DaySheet.pdf(season.cycle(), advice, paper))) {
          assertThat(season.name(), document.getNumberOfPages(), is(1));
          String text = text(document);
          Objects.requireNonNull(advice.breeding().insemination())
              .steps()
              .forEach(
                  step ->
                      assertThat(
                          season.name(),
                          text,
                          containsString(flat(Telling.onPaper(season.cycle()).say(step.text())))));
          assertThat(season.name(), text, containsString(flat("When to call a vet")));
          assertThat(season.name(), text, containsString(flat("Not a substitute for a vet")));
        }
      }
    }
  }

  @Test
  void withoutAnInseminationThereIsNoSheetForTheDay() {
    Season without =
        Seasons.many().stream()
            .filter(season -> !DaySheet.isIn(season.reasoning().advice()))
            .findFirst()
            .orElseThrow();
    assertThrows(
        IllegalArgumentException.class,
        () -> DaySheet.pdf(without.cycle(), without.reasoning().advice(), PaperSize.A4));
  }

  @Test
  void aDenseSeasonIsCutAndSaysSo() throws IOException {
    try (PDDocument document = Loader.loadPDF(summary(DENSE, PaperSize.LETTER))) {
      assertThat(document.getNumberOfPages(), is(3));
      String text = text(document);
      assertThat(text, containsString(flat("Fern <i> & Жучка Δ (invented)")));
      assertThat(text, containsString(flat("earlier rows: see the whole trace on the screen")));
    }
  }

  @Test
  void itHasTitleLanguageTagsAndItsFont() throws IOException {
    for (byte[] pdf : List.of(sheet(DENSE, PaperSize.A4), summary(DENSE, PaperSize.A4))) {
      try (PDDocument document = Loader.loadPDF(pdf)) {
        assertThat(document.getDocumentCatalog().getLanguage(), is("en"));
        assertThat(
            document.getDocumentInformation().getTitle(), containsString("Fern <i> & Жучка Δ"));
        assertThat(document.getDocumentCatalog().getMarkInfo().isMarked(), is(true));
        assertThat(document.getDocumentCatalog().getStructureTreeRoot(), is(notNullValue()));
        for (PDPage page : document.getPages()) {
          for (COSName name : page.getResources().getFontNames()) {
            PDFont font = page.getResources().getFont(name);
            assertThat(font.getName(), font.isEmbedded(), is(true));
          }
        }
      }
    }
  }

  @Test
  void bothSheetsOfPaperHaveTheirSize() throws IOException {
    try (PDDocument a4 = Loader.loadPDF(sheet(DENSE, PaperSize.A4));
        PDDocument letter = Loader.loadPDF(sheet(DENSE, PaperSize.LETTER))) {
      assertThat(Math.round(a4.getPage(0).getMediaBox().getHeight()), is(842));
      assertThat(Math.round(letter.getPage(0).getMediaBox().getWidth()), is(612));
    }
  }

  /** No record has a name that could act, and one that is markup is written as it is. */
  @Test
  void aNameCanNeitherActNorBeMarkup() throws IOException {
    String unsafe = "Ju\u001b[31mno\u202Egnp\u0007\u2028";
    String markup = "</title><b onclick='x'>&amp;\"";
    assertThrows(CycleRefused.class, () -> named(DENSE.cycle(), unsafe + markup));
    CycleRecord named = named(DENSE.cycle(), markup);
    byte[] pdf = BreederSheet.pdf(named, DENSE.reasoning(), PaperSize.A4);
    byte[] referral =
        ReferralSummary.pdf(
            named, DENSE.reasoning(), Seasons.engine().rules().sources(), PaperSize.A4);
    for (byte[] paper : List.of(pdf, referral)) {
      try (PDDocument document = Loader.loadPDF(paper)) {
        String text = text(document);
        assertThat(text, containsString(flat(markup)));
        assertThat(text.codePoints().allMatch(Legibility::isSafe), is(true));
        String title = document.getDocumentInformation().getTitle();
        assertThat(title, title.codePoints().allMatch(Legibility::isSafe), is(true));
      }
    }
  }

  private static CycleRecord named(CycleRecord cycle, String name) {
    return cycle.toBuilder().female(Female.unknown().id(name).name(name).breed(name)).build();
  }

  /** Whatever an answer says, in whatever letters, the sheet is made and fits. */
  @Test
  void hostileAnswersFitToo() throws IOException {
    for (int seed = 1; seed <= 6; seed++) {
      Reasoning invented = Reasoning.of(InventedAdvice.of(seed));
      byte[] pdf = BreederSheet.pdf(DENSE.cycle(), invented, PaperSize.A4);
      try (PDDocument document = Loader.loadPDF(pdf)) {
        assertThat("seed " + seed, document.getNumberOfPages(), is(1));
        assertThat(text(document).length(), greaterThanOrEqualTo(20));
      }
    }
  }
}
