package io.github.tiderule.api.page;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThan;

import io.github.tiderule.api.words.Texts;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** A guide is short, or it is not read. */
class GuideTest {

  private static final int WORDS = 600;

  @Test
  void everyChapterIsShorterThanSixHundredWords() {
    Texts texts = Texts.ofPages(Locale.ROOT);
    GuidePages.CHAPTERS.forEach(
        (chapter, parts) -> {
          int words = 0;
          for (int part = 1; part <= parts; part++) {
            String key = "guide." + chapter + "." + part;
            words += (texts.say(key + ".title") + " " + texts.say(key)).split("\\s+").length;
          }
          assertThat(chapter, words, lessThan(WORDS));
          assertThat(chapter, words, greaterThan(100));
          assertThat(chapter, texts.has("guide." + chapter + "." + (parts + 1)), is(false));
        });
  }
}
