package io.github.tiderule.cases.difference;

import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What a page says, without its tags: one line for each piece of text, and for what an attribute
 * says to people.
 */
final class PageText {

  private static final Pattern UNSEEN =
      Pattern.compile(
          "(?s)<!--.*?-->|<(script|style)\\b.*?</\\1>|<input[^>]*type=\"hidden\"[^>]*>");
  private static final Pattern TAG =
      Pattern.compile("<(/?[a-zA-Z!][a-zA-Z0-9]*)((?:\"[^\"]*\"|'[^']*'|[^'\">])*)>");
  private static final Set<String> WITHIN_A_LINE =
      Set.of("a", "abbr", "b", "cite", "code", "dfn", "em", "i", "small", "span", "strong", "time");
  private static final Pattern SAID =
      Pattern.compile(
          "\\s(alt|title|aria-label|placeholder|value)=\"([^\"]*)\"|\\s(checked|selected|open)\\b");
  private static final Map<String, String> ENTITIES =
      Map.of("&lt;", "<", "&gt;", ">", "&quot;", "\"", "&#34;", "\"", "&#39;", "'", "&nbsp;", " ");

  private PageText() {}

  /** The text of a page. */
  static String of(String html) {
    String bare = TAG.matcher(UNSEEN.matcher(html).replaceAll("")).replaceAll(PageText::said);
    for (Map.Entry<String, String> entity : ENTITIES.entrySet()) {
      bare = bare.replace(entity.getKey(), entity.getValue());
    }
    return bare.replace("&amp;", "&")
        .lines()
        .map(line -> line.strip().replaceAll("\\s+", " "))
        .filter(line -> !line.isEmpty())
        .collect(Collectors.joining("\n", "", "\n"));
  }

  private static String said(MatchResult tag) {
    String name = tag.group(1).toLowerCase(Locale.ROOT).replace("/", "");
    String said =
        SAID.matcher(tag.group(2))
            .results()
            .map(one -> one.group(3) == null ? one.group(1) + ": " + one.group(2) : one.group(3))
            .map(words -> "[" + words.strip().replaceAll("\\s+", " ") + "]")
            .collect(Collectors.joining(" "));
    String apart = WITHIN_A_LINE.contains(name) ? "" : "\n";
    return Matcher.quoteReplacement(apart + said + apart);
  }
}
