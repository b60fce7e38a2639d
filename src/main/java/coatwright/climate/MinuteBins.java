package coatwright.climate;

import java.time.Instant;
import java.util.Arrays;

/**
 * One sensor's air, a row a minute, in order of time whatever the order of arrival. A second
 * reading in the same minute is averaged in, so nothing is overwritten.
 */
final class MinuteBins {
  private static final int START_ROWS = 256;
  private static final long MINUTE_MS = 60_000;

  private int rows;
  private long[] minutes = new long[START_ROWS];
  private long[] atMs = new long[START_ROWS];
  private int[] counts = new int[START_ROWS];
  private double[] tempSums = new double[START_ROWS];
  private double[] vapourSums = new double[START_ROWS];
  private double[] errorsK = new double[START_ROWS];
  private double[] errorsPct = new double[START_ROWS];
  private boolean[] doubtful = new boolean[START_ROWS];

  void add(SensorAir air) {
    long millis = air.at().toEpochMilli();
    long minute = Math.floorDiv(millis, MINUTE_MS);
    int row = firstRowNotBefore(minute);
    if (row == rows || minutes[row] != minute) {
      open(row);
      minutes[row] = minute;
      atMs[row] = millis;
      counts[row] = 0;
      tempSums[row] = 0;
      vapourSums[row] = 0;
      doubtful[row] = false;
    }
    atMs[row] = Math.max(atMs[row], millis);
    counts[row]++;
    tempSums[row] += air.airTempC();
    vapourSums[row] += air.vapourPressurePa();
    errorsK[row] = air.temperatureErrorK();
    errorsPct[row] = air.rhErrorPct();
    doubtful[row] |= air.doubtful();
  }

  private int firstRowNotBefore(long minute) {
    if (rows == 0 || minutes[rows - 1] < minute) {
      return rows;
    }
    int found = Arrays.binarySearch(minutes, 0, rows, minute);
    return found >= 0 ? found : -found - 1;
  }

  /** The first row at or after an instant. */
  int rowFrom(Instant from) {
    int row = firstRowNotBefore(Math.floorDiv(from.toEpochMilli(), MINUTE_MS));
    while (row < rows && atMs[row] < from.toEpochMilli()) {
      row++;
    }
    return row;
  }

  private void open(int row) {
    if (rows == minutes.length) {
      int larger = rows * 2;
      minutes = Arrays.copyOf(minutes, larger);
      atMs = Arrays.copyOf(atMs, larger);
      counts = Arrays.copyOf(counts, larger);
      tempSums = Arrays.copyOf(tempSums, larger);
      vapourSums = Arrays.copyOf(vapourSums, larger);
      errorsK = Arrays.copyOf(errorsK, larger);
      errorsPct = Arrays.copyOf(errorsPct, larger);
      doubtful = Arrays.copyOf(doubtful, larger);
    }
    move(row, row + 1, rows - row);
    rows++;
  }

  private void move(int from, int to, int length) {
    System.arraycopy(minutes, from, minutes, to, length);
    System.arraycopy(atMs, from, atMs, to, length);
    System.arraycopy(counts, from, counts, to, length);
    System.arraycopy(tempSums, from, tempSums, to, length);
    System.arraycopy(vapourSums, from, vapourSums, to, length);
    System.arraycopy(errorsK, from, errorsK, to, length);
    System.arraycopy(errorsPct, from, errorsPct, to, length);
    System.arraycopy(doubtful, from, doubtful, to, length);
  }

  /** Forgets what lies before an instant. */
  void forgetBefore(Instant instant) {
    int first = rowFrom(instant);
    move(first, 0, rows - first);
    rows -= first;
  }

  int rows() {
    return rows;
  }

  /** When the newest reading of the row was taken, epoch milliseconds. */
  long atMs(int row) {
    return atMs[row];
  }

  SensorAir air(int row, String name) {
    return new SensorAir(
        name,
        Instant.ofEpochMilli(atMs[row]),
        tempSums[row] / counts[row],
        vapourSums[row] / counts[row],
        errorsK[row],
        errorsPct[row],
        doubtful[row]);
  }
}
