package fettle.oracle;

/** There are more candidate builds than the brute force was told to try. */
final class TooManyBuilds extends RuntimeException {
  private static final long serialVersionUID = 1;
}
