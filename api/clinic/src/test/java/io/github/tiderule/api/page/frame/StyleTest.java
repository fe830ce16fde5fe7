package io.github.tiderule.api.page.frame;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasSize;

import io.github.tiderule.api.picture.svg.Colour;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Nothing on a page has an accidental size, space, weight or colour. */
class StyleTest {

  private static final String STYLE = style();

  /** A block that names what all others take. */
  private static final Pattern ROOT = Pattern.compile(":root \\{[^}]*}");

  private static final Pattern DECLARED = Pattern.compile("([a-z-]+): ([^;{}]+);");
  private static final String SPACE =
      "(?:0|auto|var\\(--s-[a-z0-9]+\\)|calc\\((?:-1 \\* )?var\\(--s-[a-z0-9]+\\)"
          + "(?: \\+ var\\(--s-[a-z0-9]+\\))?\\))(?: !important)?";

  private static String style() {
    try (InputStream in = Frame.class.getResourceAsStream("page.css")) {
      return new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private static boolean isNamed(String property, String value) {
    return switch (property) {
      case "font-size" -> value.matches("var\\(--t-[a-z]+\\)|10pt");
      case "font-weight" -> value.matches("var\\(--w-[a-z]+\\)");
      case "margin",
          "margin-top",
          "margin-right",
          "margin-bottom",
          "margin-left",
          "padding",
          "padding-top",
          "padding-right",
          "padding-bottom",
          "padding-left",
          "gap",
          "column-gap",
          "row-gap",
          "text-indent" ->
          value.matches(SPACE + "(?: " + SPACE + ")*");
      default -> !value.matches(".*#[0-9a-f]{3,8}\\b.*");
    };
  }

  private static List<String> accidental(String style) {
    List<String> found = new ArrayList<>();
    Matcher declared = DECLARED.matcher(ROOT.matcher(style).replaceAll(""));
    while (declared.find()) {
      if (!isNamed(declared.group(1), declared.group(2).strip())) {
        found.add(declared.group());
      }
    }
    return found;
  }

  @Test
  void everySizeSpaceWeightAndColourIsNamed() {
    assertThat(accidental(STYLE), empty());
    assertThat(
        DECLARED.matcher(STYLE).results().map(found -> found.group(1)).toList(),
        hasSize(greaterThan(300)));
  }

  @Test
  void theCheckFindsWhatIsNot() {
    assertThat(
        accidental(
            "a { color: #123456; padding: 3px var(--s-1); margin: 0 auto; }"
                + " b { font-size: 13px; font-weight: 600; font-size: var(--t-small); }"),
        contains(
            "color: #123456;",
            "padding: 3px var(--s-1);",
            "font-size: 13px;",
            "font-weight: 600;"));
  }

  @Test
  void everyColourOfAPictureIsTheOneOfThePage() {
    for (Colour colour : Colour.values()) {
      assertThat(STYLE, containsString(".fill-" + colour.word() + " {"));
      assertThat(STYLE, containsString(".stroke-" + colour.word() + " {"));
    }
  }
}
