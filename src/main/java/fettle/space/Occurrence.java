package fettle.space;

import fettle.catalog.BuildEntry;
import java.util.OptionalInt;

/**
 * One placed part.
 *
 * @param index its number among the placed parts of the build, from 0
 * @param use the number of the slot in use that it sits in
 * @param path where it sits, with its position where the slot holds several parts
 * @param at the first notch it takes, where stated
 */
public record Occurrence(int index, String part, int use, String path, OptionalInt at, BuildEntry entry) {}
