package io.github.tiderule.spark;

import io.github.tiderule.api.command.stream.LineAnswer;
import java.util.List;
import java.util.stream.Stream;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.io.LongWritable;
import org.apache.hadoop.io.Text;
import org.apache.hadoop.mapreduce.lib.input.FileInputFormat;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.sql.Column;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.functions;
import org.apache.spark.sql.types.DataType;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import org.jspecify.annotations.Nullable;

/** Reads cycle files, numbered from 1 through all files in the order of their names. */
final class Input {

  private static final String FILE = "_metadata.file_path";
  private static final String ROW = "_metadata.row_index";
  private static final String CYCLE = "cycle";

  private final SparkSession session;

  Input(SparkSession session) {
    this.session = session;
  }

  /**
   * Files of one cycle file a line. Blank lines are counted and left out.
   *
   * @param path a file, a directory or a pattern
   * @param mostBytes how many bytes one task reads at most
   */
  JavaRDD<NumberedLine> lines(String path, long mostBytes) {
    JavaSparkContext context = JavaSparkContext.fromSparkContext(session.sparkContext());
    Configuration settings = new Configuration(context.hadoopConfiguration());
    settings.setLong(FileInputFormat.SPLIT_MAXSIZE, mostBytes);
    return numbered(
        context
            .newAPIHadoopFile(path, OrderedLines.class, LongWritable.class, Text.class, settings)
            .map(line -> line._2().copyBytes()));
  }

  /**
   * Rows of Parquet files.
   *
   * @param path a file, a directory or a pattern
   * @param column the column that holds a cycle file as text or bytes. Without one, the only column
   *     does where there is just one of text or bytes, and elsewhere every column is a field of the
   *     cycle file; a field without a value is left out.
   * @param parts how many parts the rows are split into
   * @throws Misuse if there is no such column, or it holds neither text nor bytes
   */
  JavaRDD<NumberedLine> rows(String path, @Nullable String column, int parts) throws Misuse {
    Dataset<Row> table = session.read().parquet(path);
    Dataset<Row> rows =
        table
            .select(
                cycle(table.schema(), column).cast(DataTypes.BinaryType).as(CYCLE),
                functions.col(FILE),
                functions.col(ROW))
            .repartitionByRange(parts, functions.col("file_path"), functions.col("row_index"))
            .sortWithinPartitions("file_path", "row_index");
    return numbered(
        rows.select(CYCLE).javaRDD().map(row -> row.isNullAt(0) ? new byte[0] : row.getAs(0)));
  }

  private static Column cycle(StructType schema, @Nullable String column) throws Misuse {
    List<String> names = Stream.of(schema.fieldNames()).toList();
    if (column == null) {
      return names.size() == 1 && holdsText(schema, names.get(0))
          ? functions.col(names.get(0))
          : functions.to_json(functions.struct(functions.col("*")));
    }
    if (!names.contains(column)) {
      throw new Misuse(
          "there is no column \"" + column + "\". Maybe one of " + String.join(", ", names) + "?");
    }
    if (!holdsText(schema, column)) {
      throw new Misuse(
          "column \""
              + column
              + "\" holds neither text nor bytes. Maybe name no column: each is"
              + " then a field of the cycle file.");
    }
    return functions.col(column);
  }

  private static boolean holdsText(StructType schema, String column) {
    DataType type = schema.apply(column).dataType();
    return type.equals(DataTypes.StringType) || type.equals(DataTypes.BinaryType);
  }

  private static JavaRDD<NumberedLine> numbered(JavaRDD<byte[]> lines) {
    return lines
        .zipWithIndex()
        .filter(line -> !LineAnswer.isBlank(line._1()))
        .map(line -> new NumberedLine(line._2() + 1, line._1()));
  }
}
