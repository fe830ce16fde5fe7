package io.github.tiderule.format.json;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.tiderule.format.Documents;
import io.github.tiderule.format.SampleAdvice;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.format.problem.ProblemCode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SchemasTest {

  private static final String AT = "\"at\": \"2027-01-08T08:00:00+01:00\"";

  @Test
  void takeTheFullCycleFile() {
    assertThat(Schemas.againstCycle(Documents.fullCycle()), is(empty()));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "'kind': 'progesterone', 'value': 2.1",
        "'kind': 'progesterone', 'value': 0",
        "'kind': 'progesterone', 'value': 0.2, 'comparator': '<', 'unit': 'nmol/L'",
        "'kind': 'progesterone-band', 'low': 10",
        "'kind': 'progesterone-band', 'high': 3, 'unit': 'ug/L'",
        "'kind': 'lh', 'result': 'negative'",
        "'kind': 'cytology', 'cornifiedPercent': 82.5",
        "'kind': 'cytology', 'neutrophils': 'many'",
        "'kind': 'vaginoscopy', 'folds': 'angular'",
        "'kind': 'sign', 'sign': 'foul-discharge', 'present': false",
        "'kind': 'ultrasound', 'finding': 'ovulated'",
        "'kind': 'breeding', 'semen': 'frozen', 'route': 'surgical'",
      })
  void takeEachKindOfObservationAsTheReaderDoes(String fields) {
    String file = cycleWith(fields);
    assertThat(Schemas.againstCycle(file), is(empty()));
    assertThat(Documents.read(file).observations().get(0).id(), is("o1"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "'kind': 'progesterone'",
        "'kind': 'progesterone', 'value': '2.1'",
        "'kind': 'progesterone', 'value': -1",
        "'kind': 'progesterone', 'value': 0, 'comparator': '<'",
        "'kind': 'progesterone', 'value': 2, 'unit': 'ng/dL'",
        "'kind': 'progesterone', 'value': 2, 'folds': 'flat'",
        "'kind': 'progesterone', 'value': 2, 'laboratory': ''",
        "'kind': 'progesterone-band'",
        "'kind': 'lh'",
        "'kind': 'cytology'",
        "'kind': 'vaginoscopy', 'folds': 'round'",
        "'kind': 'sign', 'sign': 'stands'",
        "'kind': 'ultrasound', 'finding': 'follicles', 'value': 3",
        "'kind': 'breeding', 'semen': 'frozen'",
        "'kind': 'temperature', 'value': 37.5",
      })
  void refuseWhatTheReaderRefuses(String fields) {
    String file = cycleWith(fields);
    assertThat(Schemas.againstCycle(file), is(not(empty())));
    assertThat(Documents.refused(file), is(not(empty())));
  }

  private static String cycleWith(String fields) {
    return Documents.cycleWith("{\"id\": \"o1\", " + AT + ", " + fields.replace('\'', '"') + "}");
  }

  @Test
  void takeWhatTheAdviceWriterWrites() {
    for (Layout layout : Layout.values()) {
      assertThat(Schemas.againstAdvice(AdviceJson.text(SampleAdvice.full(), layout)), is(empty()));
      assertThat(Schemas.againstAdvice(AdviceJson.text(SampleAdvice.empty(), layout)), is(empty()));
    }
  }

  @Test
  void refuseAnUnknownFieldAnywhereInAdvice() throws IOException {
    String json = AdviceJson.text(SampleAdvice.full(), Layout.INDENTED);
    JsonNode advice = new ObjectMapper().readTree(json);
    List<String> places = objects(advice, "");
    assertThat(places.size() > 25, is(true));
    for (String place : places) {
      JsonNode changed = advice.deepCopy();
      JsonNode object = place.isEmpty() ? changed : changed.at(place);
      ((com.fasterxml.jackson.databind.node.ObjectNode) object).put("surplus", 1);
      assertThat(place, Schemas.againstAdvice(changed.toString()), is(not(empty())));
    }
  }

  private static List<String> objects(JsonNode node, String place) {
    List<String> places = new ArrayList<>();
    if (node.isObject()) {
      places.add(place);
      node.fieldNames()
          .forEachRemaining(name -> places.addAll(objects(node.get(name), place + "/" + name)));
    }
    for (int i = 0; node.isArray() && i < node.size(); i++) {
      places.addAll(objects(node.get(i), place + "/" + i));
    }
    return places;
  }

  @Test
  void takeARefusalWithEveryCode() {
    List<Problem> problems =
        Arrays.stream(ProblemCode.values())
            .map(code -> Problem.of("/observations/0/a~1b", code, "value is -3"))
            .toList();
    assertThat(Schemas.againstProblems(ProblemsJson.text(problems, Layout.INDENTED)), is(empty()));
    assertThat(Schemas.againstProblems(ProblemsJson.ofLine(7, problems)), is(empty()));
    assertThat(
        Schemas.againstProblems(ProblemsJson.text(List.of(), Layout.INDENTED)), is(not(empty())));
  }
}
