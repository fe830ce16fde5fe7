package io.github.tiderule.rules;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.rules.conclusion.Finding;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import org.drools.model.codegen.ExecutableModelProject;
import org.junit.jupiter.api.Test;
import org.kie.api.KieBase;
import org.kie.api.KieServices;
import org.kie.api.builder.KieBuilder;
import org.kie.api.builder.KieFileSystem;
import org.kie.api.builder.Message;

/** Results do not hang on the order of files, on the order of rules, or on names of packages. */
class RenamedRulesTest {

  private static final RuleBase RULES = RuleBase.load();
  private static final RuleTexts TEXTS = RuleTexts.load();

  /** Compiling takes longest, so that a stage is compiled again only with another text. */
  private static final Map<List<String>, KieBase> COMPILED = new HashMap<>();

  /** Stages that are compiled again: by night all of them. */
  private static final Set<Stage> REMADE =
      Nightly.of(EnumSet.of(Stage.DAYS), EnumSet.allOf(Stage.class));

  /** Those stages compiled anew, their packages renamed, files and rules in reverse. */
  private static RuleBase remade(UnaryOperator<String> change) {
    return RULES.compiledAs(
        (stage, base) -> REMADE.contains(stage) ? compiled(stage, change) : base);
  }

  private static KieBase compiled(Stage stage, UnaryOperator<String> change) {
    return COMPILED.computeIfAbsent(texts(stage, change), texts -> compiled(stage, texts));
  }

  private static List<String> texts(Stage stage, UnaryOperator<String> change) {
    List<String> texts = new ArrayList<>();
    new TreeMap<>(TEXTS.files())
        .forEach(
            (file, text) -> {
              if (file.startsWith(stage.word() + "/")) {
                texts.add(change.apply(reversed(text)));
              }
            });
    Collections.reverse(texts);
    return texts;
  }

  private static KieBase compiled(Stage stage, List<String> texts) {
    KieServices services = KieServices.get();
    KieFileSystem files = services.newKieFileSystem();
    files.generateAndWritePomXML(services.newReleaseId("renamed", stage.word(), "1"));
    int number = 0;
    for (String text : texts) {
      number++;
      files.write("src/main/resources/zz/r" + number + ".drl", text);
    }
    KieBuilder builder = services.newKieBuilder(files).buildAll(ExecutableModelProject.class);
    assertThat(builder.getResults().getMessages(Message.Level.ERROR), is(empty()));
    return services.newKieContainer(builder.getKieModule().getReleaseId()).getKieBase();
  }

  private static String reversed(String text) {
    int first = text.indexOf("\nrule ") + 1;
    List<String> rules =
        new ArrayList<>(List.of(Pattern.compile("(?m)^(?=rule \")").split(text.substring(first))));
    Collections.reverse(rules);
    return "package zz.renamed\n\n"
        + text.substring(0, first).replaceFirst("package \\S+", "")
        + String.join("\n", rules);
  }

  private static List<String> differences(RuleBase other) {
    List<String> differences = new ArrayList<>();
    for (RuleCase one : RuleCase.all()) {
      compare(other, one.stage(), FactLine.facts(one.facts()), one.toString(), differences);
    }
    for (long seed = 1; seed <= 60; seed++) {
      List<Object> facts = SeededCycles.of(seed);
      compare(other, Stage.READING, facts, "seed " + seed, differences);
      List<Object> evidence = StageTest.evidence(RULES, facts);
      compare(other, Stage.FINDINGS, evidence, "seed " + seed, differences);
      evidence.addAll(RULES.run(Stage.FINDINGS, evidence).all(Finding.class));
      compare(other, Stage.NEXT, evidence, "seed " + seed, differences);
      for (Stage stage : List.of(Stage.SAFETY, Stage.COURSE, Stage.SHEET, Stage.NOTES)) {
        compare(other, stage, evidence, "seed " + seed, differences);
      }
    }
    return differences;
  }

  private static void compare(
      RuleBase other, Stage stage, List<Object> facts, String where, List<String> differences) {
    String here = RULES.run(stage, facts).firings().toString();
    String there = other.run(stage, facts).firings().toString();
    if (!here.equals(there)) {
      differences.add(where);
    }
  }

  @Test
  void renamedAndReversedRulesSayTheSame() {
    assertThat(RuleCase.all().size(), is(greaterThan(300)));
    assertThat(differences(remade(UnaryOperator.identity())), is(empty()));
  }

  @Test
  void aRuleThatSaysSomethingElseIsNoticed() {
    RuleBase other =
        remade(
            text -> text.replace("daysAfterOvulation < $first", "daysAfterOvulation < $first - 3"));
    assertThat(differences(other), is(not(empty())));
  }
}
