package io.github.tiderule.api.words;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What pages, reports, pictures and paper say stands in the texts, and nowhere in their code. */
class OnePlaceTest {

  private static final List<Path> SOURCES =
      List.of(
          Path.of("src/main/java/io/github/tiderule/api"),
          Path.of("../sheet/src/main/java/io/github/tiderule/api"));

  private static final Path TEMPLATES = Path.of("src/main/jte");

  /** Days and months, and the rule book, which is of rules. */
  private static final Set<String> EXEMPT =
      Set.of(
          "Words.java",
          "RulebookHtml.java",
          "RulebookMarkdown.java",
          "RulebookText.java",
          "RulebookWords.java");

  /**
   * Names: of kinds of files and addresses, of a breed, a font, a header and ourselves; a citation;
   * a breadth.
   */
  private static final Set<String> ALLOWED =
      Set.of(
          "text/css; charset=utf-8",
          "text/javascript; charset=utf-8",
          "tel:",
          "webcal:",
          "Border Collie",
          "Referer",
          "Liberation Sans",
          "Tiderule",
          "et al",
          "Wed");

  private static final Pattern COMMENT =
      Pattern.compile("\"(?:[^\"\\\\\\n]|\\\\.)*\"|/\\*.*?\\*/|//[^\\n]*", Pattern.DOTALL);

  /** What is thrown tells a contributor of a fault, and is not shown to people. */
  private static final Pattern THROWN =
      Pattern.compile(
          "\\bnew \\w+(?:Exception|Error)\\(.*?;|\\brequireNonNull\\(.*?;", Pattern.DOTALL);

  private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\\\n]|\\\\.)*)\"");

  /** Two words one after the other, or a word as it begins a sentence or ends a label. */
  private static final Pattern ENGLISH =
      Pattern.compile("[A-Za-z]{2,}[,;:.]? [A-Za-z]{2,}|^[A-Z][a-z]{2,}[a-z .:]*$|^[a-z]{2,}:$");

  private static final Pattern DIRECTIVE =
      Pattern.compile("@(?:if|elseif|for|template\\.[\\w-]+)\\(");

  private static final Pattern KEY = Pattern.compile("[a-z][\\w-]*(?:\\.[\\w-]+)+");

  private static List<Path> files(Path root, String ending) {
    try (Stream<Path> all = Files.walk(root)) {
      return all.filter(file -> file.toString().endsWith(ending)).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<Path> sources(String... packages) {
    return Stream.of(packages)
        .flatMap(one -> SOURCES.stream().map(root -> root.resolve(one)))
        .filter(Files::isDirectory)
        .flatMap(root -> files(root, ".java").stream())
        .toList();
  }

  private static List<String> literals(String source) {
    String code =
        COMMENT
            .matcher(source)
            .replaceAll(
                found ->
                    found.group().startsWith("\"") ? Matcher.quoteReplacement(found.group()) : "");
    return LITERAL
        .matcher(THROWN.matcher(code).replaceAll(""))
        .results()
        .map(found -> found.group(1))
        .toList();
  }

  private static List<String> english(String source) {
    return literals(source).stream()
        .filter(
            words ->
                !words.startsWith("<")
                    && !words.contains("sans-serif")
                    && !ALLOWED.contains(words.strip()))
        .filter(words -> !words.contains("mm;") && !words.contains("font:"))
        .filter(words -> ENGLISH.matcher(words).find())
        .toList();
  }

  /**
   * What of a template a reader sees that is not filled in: without tags, values and directives.
   */
  private static String shown(String template) {
    StringBuilder left = new StringBuilder();
    String words =
        template
            .replaceAll("(?s)<%--.*?--%>", "")
            .replaceAll("(?m)^@(?:import|param).*$", "")
            .replaceAll("\\$unsafe\\{[^}]*}|[$!]\\{[^}]*}", "");
    Matcher directive = DIRECTIVE.matcher(words);
    int at = 0;
    while (directive.find(at)) {
      left.append(words, at, directive.start());
      at = endOf(words, directive.end());
    }
    return left.append(words.substring(at))
        .toString()
        .replaceAll("<[^>]*>", "")
        .replaceAll("@(?:else|endif|endfor)", "")
        .replaceAll("ng/mL|nmol/L|Tiderule|\\b[A-Z]{3}-\\d{3}\\b", "");
  }

  /** Where the brackets of a directive close, or the markup it is given begins. */
  private static int endOf(String words, int from) {
    int open = 1;
    for (int at = from; at < words.length(); at++) {
      if (words.startsWith("@`", at)) {
        return at + 2;
      }
      open += words.charAt(at) == '(' ? 1 : words.charAt(at) == ')' ? -1 : 0;
      if (open == 0) {
        return at + 1;
      }
    }
    return words.length();
  }

  @Test
  void theCodeHoldsNoEnglish() throws IOException {
    List<Path> files = sources("page", "paper", "picture", "report", "calendar");
    assertThat(files, hasSize(greaterThan(80)));
    List<String> found = new ArrayList<>();
    for (Path file : files) {
      if (!EXEMPT.contains(file.getFileName().toString())) {
        english(Files.readString(file))
            .forEach(words -> found.add(file.getFileName() + ": " + words));
      }
    }
    assertThat(String.join("\n", found), found, is(empty()));
  }

  @Test
  void theTemplatesHoldNoEnglish() throws IOException {
    List<Path> files = files(TEMPLATES, ".jte");
    assertThat(files, hasSize(greaterThan(40)));
    List<String> found = new ArrayList<>();
    for (Path file : files) {
      String left = shown(Files.readString(file));
      if (Pattern.compile("[A-Za-z]{2,}").matcher(left).find()) {
        found.add(file.getFileName() + ": " + left.replaceAll("\\s+", " "));
      }
    }
    assertThat(String.join("\n", found), found, is(empty()));
  }

  @Test
  void bothChecksFindWhatStandsInTheCode() {
    assertThat(
        english(
            """
            page.heading("Next test"); // "this one"
            page.line("Estimate"); page.hanging("why:", x); say("paper.vet");
            throw new IllegalStateException("no such thing");
            """),
        contains("Next test", "Estimate", "why:"));
    assertThat(
        shown("@if(a.b(c()))<p class=\"soft text\">${frame.say(\"x\")} Two words</p>@endif")
            .strip(),
        is("Two words"));
  }

  @Test
  void everyTextOfReportsIsUsedAndEveryTextUsedIsThere() throws IOException {
    Texts texts = Texts.ofReports();
    StringBuilder all = new StringBuilder();
    for (Path file : sources("paper", "picture", "report", "calendar")) {
      String source = Files.readString(file);
      all.append(source);
      literals(source).stream()
          .filter(words -> KEY.matcher(words).matches())
          .filter(words -> !words.startsWith("java.") && !words.endsWith(".css"))
          .forEach(
              key ->
                  assertThat(
                      file + ": " + key,
                      texts.has(key) || texts.has(key + ".one") || isFamily(texts, key),
                      is(true)));
    }
    List<String> unused =
        texts.keys().stream().filter(key -> !isUsed(all.toString(), key)).sorted().toList();
    assertThat(unused, is(empty()));
  }

  private static boolean isFamily(Texts texts, String key) {
    return texts.keys().stream().anyMatch(one -> one.startsWith(key + "."));
  }

  /** As it stands, for one or several, or as a word of its family. */
  private static boolean isUsed(String sources, String key) {
    String family = key.substring(0, Math.max(0, key.lastIndexOf('.')));
    return sources.contains('"' + key + '"')
        || sources.contains("count(\"" + family + '"')
        || sources.contains('"' + family + ".\"")
        || sources.contains("word(\"" + family + '"')
        || (key.endsWith(".no-change") && sources.contains('"' + family + '"'));
  }

  @Test
  void placesAreFilledOnce() {
    Texts texts = Texts.ofReports();
    assertThat(texts.say("stamp.engine", "{0} $1"), is("Engine {0} $1, rules"));
    assertThat(texts.say("plan.commit.by", "{1}", "noon"), is("{1} by noon, at the latest."));
    assertThat(texts.count("share.hours", 1), is("1 hour"));
    assertThat(texts.count("share.hours", 2), is("2 hours"));
    assertThrows(MissingResourceException.class, () -> texts.say("no.such.text"));
  }

  @Test
  void aLanguageThatIsMissingIsEnglish() {
    assertThat(
        Texts.ofPages(Locale.forLanguageTag("de-AT")).say("signin.title"),
        is(Texts.ofPages(Locale.ROOT).say("signin.title")));
    assertThat(
        Texts.ofPages(Locale.ROOT).keys(),
        containsInAnyOrder(Texts.ofPages(Locale.UK).keys().toArray()));
  }
}
