package blindlap.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Rows of a SQLite file that is too damaged for SQLite: every page that looks like a leaf of a
 * table or an index is read on its own, without the pages that lead to it
 * (sqlite.org/fileformat2.html, sections 1.6 to 2.1). What it finds need not be true; only a hash
 * can tell.
 */
final class Salvage implements AutoCloseable {
  private static final int HEADER = 100;
  private static final int LEAF_OF_TABLE = 13;
  private static final int LEAF_OF_INDEX = 10;
  private static final int USUAL_PAGE = 4096;
  private static final int LARGEST_ROW = 64 << 20;

  private final FileChannel channel;
  private final int pageSize;
  private final int usable;
  private final int pages;

  /**
   * A row.
   *
   * @param texts its values that are texts, in order
   * @param pages numbers of the pages it lies on, from 1
   * @param ofIndex true if it is of an index
   * @param blobs its values that are bytes, in order
   */
  record Row(List<String> texts, Set<Integer> pages, boolean ofIndex, List<byte[]> blobs) {}

  /** Where a row lies: page and cell. */
  record Place(int page, int cell) {}

  private Salvage(FileChannel channel, int pageSize, int reserved) throws IOException {
    this.channel = channel;
    this.pageSize = pageSize;
    this.usable = pageSize - reserved;
    this.pages = (int) ((channel.size() + pageSize - 1) / pageSize);
  }

  /**
   * Opens a file. Where its header names another size of pages than notebooks are made with, that
   * size is taken in which more rows can be read: the header may be what is damaged.
   */
  static Salvage open(Path file) throws IOException {
    FileChannel channel = FileChannel.open(file, StandardOpenOption.READ);
    ByteBuffer header = ByteBuffer.allocate(HEADER);
    channel.read(header, 0);
    int size = Short.toUnsignedInt(header.getShort(16));
    Salvage usual = new Salvage(channel, USUAL_PAGE, 0);
    if (size == USUAL_PAGE || size < 512 || Integer.bitCount(size) != 1) {
      return usual;
    }
    Salvage named = new Salvage(channel, size, 0);
    return named.readable() > usual.readable() ? named : usual;
  }

  private int readable() throws IOException {
    int readable = 0;
    for (Place place : places()) {
      readable += row(place).isPresent() ? 1 : 0;
    }
    return readable;
  }

  /** Places of all rows that can be found, in the order of pages. */
  List<Place> places() throws IOException {
    List<Place> places = new ArrayList<>();
    for (int page = 1; page <= pages; page++) {
      int cells = cells(page(page), start(page));
      for (int cell = 0; cell < cells; cell++) {
        places.add(new Place(page, cell));
      }
    }
    return places;
  }

  private static int start(int page) {
    return page == 1 ? HEADER : 0;
  }

  private int cells(ByteBuffer page, int start) {
    if (page.get(start) != LEAF_OF_TABLE && page.get(start) != LEAF_OF_INDEX) {
      return 0;
    }
    int cells = Short.toUnsignedInt(page.getShort(start + 3));
    return Math.min(cells, (pageSize - start - 8) / 2);
  }

  /** The row at a place; empty if nothing there can be read as one. */
  Optional<Row> row(Place place) throws IOException {
    try {
      Set<Integer> used = new TreeSet<>(Set.of(place.page()));
      ByteBuffer page = page(place.page());
      boolean ofIndex = page.get(start(place.page())) == LEAF_OF_INDEX;
      int pointer = start(place.page()) + 8 + 2 * place.cell();
      page.position(Short.toUnsignedInt(page.getShort(pointer)));
      long size = varint(page);
      if (!ofIndex) {
        varint(page); // the row's number
      }
      if (size < 1 || size > LARGEST_ROW) {
        return Optional.empty();
      }
      List<byte[]> blobs = new ArrayList<>();
      List<String> texts = texts(payload(page, (int) size, used), blobs);
      return Optional.of(new Row(texts, used, ofIndex, blobs));
    } catch (RuntimeException notARow) {
      return Optional.empty();
    }
  }

  private ByteBuffer payload(ByteBuffer page, int size, Set<Integer> used) throws IOException {
    int most = usable - 35;
    int least = (usable - 12) * 32 / 255 - 23;
    int fitting = least + (size - least) % (usable - 4);
    int local = size <= most ? size : fitting <= most ? fitting : least;
    ByteBuffer payload = ByteBuffer.allocate(size);
    payload.put(slice(page, local));
    int next = payload.hasRemaining() ? page.getInt() : 0;
    while (payload.hasRemaining()) {
      if (next < 1 || next > pages || !used.add(next)) {
        throw new IllegalArgumentException("an overflow chain breaks");
      }
      ByteBuffer overflow = page(next);
      next = overflow.getInt();
      payload.put(slice(overflow, Math.min(payload.remaining(), usable - 4)));
    }
    return payload.flip();
  }

  private static ByteBuffer slice(ByteBuffer from, int length) {
    ByteBuffer slice = from.slice(from.position(), length);
    from.position(from.position() + length);
    return slice;
  }

  /** The values of a record that are texts in a UTF-8 file; those that are bytes apart. */
  private static List<String> texts(ByteBuffer record, List<byte[]> blobs) {
    int end = Math.toIntExact(varint(record));
    List<Long> types = new ArrayList<>();
    while (record.position() < end) {
      types.add(varint(record));
    }
    List<String> texts = new ArrayList<>();
    for (long type : types) {
      byte[] value = new byte[length(type)];
      record.get(value);
      if (type >= 13 && type % 2 == 1) {
        texts.add(new String(value, StandardCharsets.UTF_8));
      } else if (type >= 12) {
        blobs.add(value);
      }
    }
    return texts;
  }

  private static int length(long type) {
    if (type >= 12) {
      return Math.toIntExact((type - 12) / 2);
    }
    return new int[] {0, 1, 2, 3, 4, 6, 8, 8, 0, 0, 0, 0}[(int) type];
  }

  private static long varint(ByteBuffer from) {
    long value = 0;
    for (int i = 0; i < 8; i++) {
      byte next = from.get();
      value = value << 7 | next & 0x7f;
      if (next >= 0) {
        return value;
      }
    }
    return value << 8 | from.get() & 0xff;
  }

  private ByteBuffer page(int number) throws IOException {
    ByteBuffer page = ByteBuffer.allocate(pageSize);
    long from = (long) (number - 1) * pageSize;
    while (page.hasRemaining() && channel.read(page, from + page.position()) >= 0) {
      // Short reads are continued; what is missing at the end stays zero.
    }
    return page.clear();
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
