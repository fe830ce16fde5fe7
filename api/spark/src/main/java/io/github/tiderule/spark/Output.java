package io.github.tiderule.spark;

import java.io.IOException;
import java.util.List;
import java.util.function.BiConsumer;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import org.apache.spark.storage.StorageLevel;
import scala.Tuple2;

/**
 * Writes answers into two directories that must not exist yet: {@value #ADVICE}, and {@value
 * #REFUSED} with the number of each line that got none and why.
 */
final class Output {

  static final String ADVICE = "advice";
  static final String REFUSED = "refused";

  private final SparkSession session;
  private final String directory;

  private Output(SparkSession session, String directory) {
    this.session = session;
    this.directory = directory;
  }

  /**
   * Where answers will be written.
   *
   * @throws Misuse if there are answers already
   * @throws IOException if the file system cannot be asked
   */
  static Output into(SparkSession session, String directory) throws Misuse, IOException {
    Path place = new Path(directory);
    FileSystem files = place.getFileSystem(session.sparkContext().hadoopConfiguration());
    for (String part : List.of(ADVICE, REFUSED)) {
      if (files.exists(new Path(place, part))) {
        throw new Misuse(
            directory
                + "/"
                + part
                + " exists already. Maybe remove it, or name another directory?");
      }
    }
    return new Output(session, directory);
  }

  /** As text, one answer a line, in the order of the input; refusals in a single file. */
  Written asText(JavaRDD<NumberedAnswer> answers) {
    return write(
        answers, (some, part) -> some.map(NumberedAnswer::text).saveAsTextFile(path(part)));
  }

  /** As Parquet: the number of each line, and its answer as text. */
  Written asParquet(JavaRDD<NumberedAnswer> answers) {
    StructType columns =
        new StructType()
            .add("line", DataTypes.LongType, false)
            .add("answer", DataTypes.StringType, false);
    return write(
        answers,
        (some, part) ->
            session
                .createDataFrame(
                    some.map(answer -> RowFactory.create(answer.number(), answer.text())), columns)
                .write()
                .parquet(path(part)));
  }

  private String path(String part) {
    return new Path(directory, part).toString();
  }

  private static Written write(
      JavaRDD<NumberedAnswer> answers, BiConsumer<JavaRDD<NumberedAnswer>, String> writing) {
    // on disk, so that no line is answered twice for the two directories
    JavaRDD<NumberedAnswer> kept = answers.persist(StorageLevel.DISK_ONLY());
    try {
      writing.accept(kept.filter(NumberedAnswer::isAdvice), ADVICE);
      writing.accept(inOneFile(kept.filter(answer -> !answer.isAdvice())), REFUSED);
      // by name: the hash code of an enum constant, which sorts counts, differs between executors
      return Written.of(kept.map(answer -> answer.outcome().name()).countByValue());
    } finally {
      kept.unpersist();
    }
  }

  private static JavaRDD<NumberedAnswer> inOneFile(JavaRDD<NumberedAnswer> answers) {
    return answers
        .mapToPair(answer -> new Tuple2<>(answer.number(), answer))
        .sortByKey(true, 1)
        .values();
  }
}
