package io.github.tiderule.spark;

import java.io.IOException;
import java.util.Comparator;
import java.util.List;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.io.LongWritable;
import org.apache.hadoop.io.Text;
import org.apache.hadoop.mapreduce.InputSplit;
import org.apache.hadoop.mapreduce.JobContext;
import org.apache.hadoop.mapreduce.RecordReader;
import org.apache.hadoop.mapreduce.TaskAttemptContext;
import org.apache.hadoop.mapreduce.lib.input.LineRecordReader;
import org.apache.hadoop.mapreduce.lib.input.TextInputFormat;

/**
 * Lines of text files in the order of the files' names. A line ends with a line feed and nothing
 * else, as for {@code batch}; the usual format would also end it at a carriage return.
 */
public final class OrderedLines extends TextInputFormat {

  private static final byte[] LINE_FEED = {'\n'};

  @Override
  public RecordReader<LongWritable, Text> createRecordReader(
      InputSplit split, TaskAttemptContext context) {
    return new LineRecordReader(LINE_FEED.clone());
  }

  @Override
  protected List<FileStatus> listStatus(JobContext job) throws IOException {
    return super.listStatus(job).stream()
        .sorted(Comparator.comparing(file -> file.getPath().toString()))
        .toList();
  }
}
