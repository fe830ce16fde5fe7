package io.github.tiderule.cases.fuzz;

import com.code_intelligence.jazzer.junit.DictionaryFile;
import com.code_intelligence.jazzer.junit.FuzzTest;
import io.github.tiderule.api.report.RefusalReport;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.format.json.ProblemsJson;

/** Any bytes as a cycle file: advice that holds together, or a refusal with its reasons. */
class CycleFuzz {

  @DictionaryFile(resourcePath = "cycle.dict")
  @FuzzTest(maxDuration = Fuzzing.MOST)
  void read(byte[] file) {
    Reading reading = CycleFile.read(file);
    if (reading instanceof Reading.Refused refused) {
      Shown.refusal(refused.problems());
      Shown.json(ProblemsJson.text(refused.problems(), Layout.ONE_LINE));
      Shown.text(RefusalReport.text("a file", refused.problems()));
    } else if (reading instanceof Reading.Read read) {
      Sound.advice(Sound.ENGINE, read.cycle());
    }
  }
}
