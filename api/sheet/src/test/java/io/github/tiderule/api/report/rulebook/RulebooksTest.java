package io.github.tiderule.api.report.rulebook;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.tiderule.api.report.text.Columns;
import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.format.json.RulebookJson;
import io.github.tiderule.format.json.Schemas;
import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.RuleCard;
import io.github.tiderule.rules.parameter.Parameter;
import io.github.tiderule.rules.source.Source;
import java.io.IOException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class RulebooksTest {

  private static final RuleBase RULES = RuleBase.load();
  private static final Pattern LINK = Pattern.compile("href=\"#([^\"]+)\"");
  private static final Pattern TAG = Pattern.compile("<(/?)([a-z][a-z0-9]*)\\b[^>]*>");

  @Test
  void allNameEveryRuleParameterAndSource() {
    String markdown = RulebookMarkdown.text(RULES);
    String html = RulebookHtml.text(RULES);
    String json = RulebookJson.text(RULES);
    for (RuleCard card : RULES.cards()) {
      assertThat(markdown, containsString("#### " + card.id() + " "));
      assertThat(html, containsString("id=\"rule-" + card.id() + "\""));
      assertThat(json, containsString("\"id\": \"" + card.id() + "\""));
    }
    for (Parameter parameter : RULES.parameters().all()) {
      assertThat(markdown, containsString("| `" + parameter.id() + "` |"));
      assertThat(html, containsString("<code>" + parameter.id() + "</code>"));
      assertThat(json, containsString("\"id\": \"" + parameter.id() + "\""));
    }
    for (Source source : RULES.sources().all()) {
      assertThat(markdown, containsString("| `" + source.key() + "` |"));
      assertThat(html, containsString("id=\"source-" + source.key() + "\""));
      assertThat(json, containsString("\"key\": \"" + source.key() + "\""));
    }
  }

  @Test
  void thePageNeedsNothingElseAndItsLinksHold() {
    String html = RulebookHtml.text(RULES);
    assertThat(html, not(containsString("http:")));
    assertThat(html, not(containsString("https:")));
    assertThat(html, not(containsString("<script")));
    Matcher link = LINK.matcher(html);
    int links = 0;
    while (link.find()) {
      assertThat(html, containsString("id=\"" + link.group(1) + "\""));
      links++;
    }
    assertThat(links > 0, is(true));
  }

  @Test
  void thePageClosesWhatItOpens() {
    var open = new java.util.ArrayDeque<String>();
    Matcher tag = TAG.matcher(RulebookHtml.text(RULES));
    while (tag.find()) {
      if (tag.group(2).equals("meta")) {
        continue;
      }
      if (tag.group(1).isEmpty()) {
        open.push(tag.group(2));
      } else {
        assertThat(open.pop(), is(tag.group(2)));
      }
    }
    assertThat(open.isEmpty(), is(true));
  }

  @Test
  void theJsonFitsItsSchemaAndABrokenOneDoesNot() {
    String json = RulebookJson.text(RULES);
    assertThat(Schemas.againstRulebook(json), is(empty()));
    assertThat(
        Schemas.againstRulebook(json.replaceFirst("\"sentence\"", "\"phrase\"")), is(not(empty())));
  }

  @Test
  void everyRuleStandsUnderOneConcernAsASentence() {
    String text = RulebookText.text(RULES);
    String html = RulebookHtml.text(RULES);
    text.lines().forEach(line -> assertThat(line, Columns.of(line) <= Page.WIDTH, is(true)));
    assertThat(
        RULES.concerns().stream().mapToInt(concern -> concern.cards().size()).sum(),
        is(RULES.cards().size()));
    for (RuleCard card : RULES.cards()) {
      assertThat(text, containsString("\n  " + card.id() + " "));
      assertThat(html, containsString(card.title().replace("'", "&#39;")));
    }
  }

  @Test
  void theJsonKeepsEveryDigit() throws IOException {
    JsonNode book = new ObjectMapper().readTree(RulebookJson.text(RULES));
    assertThat(book.get("cards").size(), is(RULES.cards().size()));
    for (JsonNode parameter : book.get("parameters")) {
      assertThat(
          parameter.get("id").asText(),
          parameter.get("value").asDouble(),
          is(RULES.parameters().value(parameter.get("id").asText())));
    }
  }
}
