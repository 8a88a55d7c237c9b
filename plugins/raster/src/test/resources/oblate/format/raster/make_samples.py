# SPDX-License-Identifier: Apache-2.0
"""Wrote the sample files beside it, by the texts of the standards and with no imaging library: the encoders here share nothing with the
decoders under test. Every file is W x H pixels; SampleFilesTest computes the same sample values from the same formulas.
Run as: python3 make_samples.py"""
import struct
import zlib

W, H = 17, 11


def v8(x, y, c):
    return (x * 7 + y * 13 + c * 50) % 256


def v16(x, y, c):
    return (x * 4099 + y * 977 + c * 20011) % 65536


def v32(x, y, c):
    return (x * 123456789 + y * 987654321 + c * 55555) % 2**32


def vf(x, y, c):
    return (x - 3) * 0.25 + y * 1.5 + c * 10


# ---------------------------------------------------------------- TIFF 6.0

def lzw(data):
    out, acc, n = bytearray(), 0, 0

    def put(code, width):
        nonlocal acc, n
        acc = (acc << width) | code
        n += width
        while n >= 8:
            out.append((acc >> (n - 8)) & 255)
            n -= 8
        acc &= (1 << n) - 1

    table = {bytes([i]): i for i in range(256)}
    width = 9
    put(256, width)
    w = b''
    nextcode = 258
    for i in range(len(data)):
        k = data[i:i + 1]
        if w + k in table:
            w += k
            continue
        put(table[w], width)
        table[w + k] = nextcode
        nextcode += 1
        if nextcode == 512:
            width = 10
        elif nextcode == 1024:
            width = 11
        elif nextcode == 2048:
            width = 12
        elif nextcode == 4095:
            put(256, width)
            table = {bytes([i]): i for i in range(256)}
            width = 9
            nextcode = 258
        w = k
    put(table[w], width)
    nextcode += 1
    if nextcode == 512:
        width = 10
    elif nextcode == 1024:
        width = 11
    elif nextcode == 2048:
        width = 12
    put(257, width)
    if n:
        out.append((acc << (8 - n)) & 255)
    return bytes(out)


def packbits(data):
    out = bytearray()
    i = 0
    while i < len(data):
        run = 1
        while i + run < len(data) and data[i + run] == data[i] and run < 128:
            run += 1
        if run > 1:
            out += bytes([257 - run, data[i]])
            i += run
        else:
            j = i + 1
            while j < len(data) and j - i < 128 and not (j + 1 < len(data) and data[j] == data[j + 1]):
                j += 1
            out += bytes([j - i - 1]) + data[i:j]
            i = j
    return bytes(out)


def pack(values, kind, e):
    return struct.pack(e + str(len(values)) + {'u8': 'B', 'u16': 'H', 'u32': 'I', 'i16': 'h', 'f32': 'f', 'f64': 'd'}[kind], *values)


def block(x0, y0, w, h, chans, fn, kind, e, predictor):
    """Rows of a strip or tile, samples interleaved; beyond the picture zeros."""
    out = b''
    for y in range(y0, y0 + h):
        row = [fn(x, y, c) if x < W and y < H else 0 for x in range(x0, x0 + w) for c in chans]
        s = len(chans)
        if predictor == 2:
            m = {'u8': 256, 'u16': 65536, 'u32': 2**32}[kind]
            row = [(row[i] - (row[i - s] if i >= s else 0)) % m for i in range(len(row))]
        if predictor == 3:
            size = 4 if kind == 'f32' else 8
            raw = pack(row, kind, '>')
            planes = b''.join(raw[b::size] for b in range(size))
            out += bytes((planes[i] - (planes[i - s] if i >= s else 0)) % 256 for i in range(len(planes)))
        else:
            out += pack(row, kind, e)
    return out


SIZE = {'u8': 8, 'u16': 16, 'u32': 32, 'i16': 16, 'f32': 32, 'f64': 64}
FORMAT = {'u8': 1, 'u16': 1, 'u32': 1, 'i16': 2, 'f32': 3, 'f64': 3}


def tiff(name, fn, kind, channels, photometric, e='<', compression=1, predictor=1, planar=1, tile=None, rows=5, extra=None,
         colourmap=None, orientation=None, big=False, pages=1, raw=None, bits=None, ascii_tags=()):
    squeeze = {1: lambda d: d, 5: lzw, 8: zlib.compress, 32773: packbits}[compression]
    blocks = []
    groups = [[c] for c in range(channels)] if planar == 2 else [list(range(channels))]
    for group in groups:
        if raw is not None:
            blocks.append(squeeze(raw))
        elif tile:
            for ty in range(0, H, tile):
                for tx in range(0, W, tile):
                    blocks.append(squeeze(block(tx, ty, tile, tile, group, fn, kind, e, predictor)))
        else:
            for y in range(0, H, rows):
                blocks.append(squeeze(block(0, y, W, min(rows, H - y), group, fn, kind, e, predictor)))
    head = 16 if big else 8
    body = b''
    offsets = []
    for b in blocks:
        offsets.append(head + len(body))
        body += b + (b'\0' if len(b) % 2 else b'')
    entries = [(256, 3, [W]), (257, 3, [H]), (258, 3, [bits or SIZE[kind]] * channels), (259, 3, [compression]),
               (262, 3, [photometric]), (277, 3, [channels]), (284, 3, [planar]), (339, 3, [FORMAT[kind]] * channels)]
    if predictor > 1:
        entries.append((317, 3, [predictor]))
    if tile:
        entries += [(322, 3, [tile]), (323, 3, [tile]), (324, 4, offsets), (325, 4, [len(b) for b in blocks])]
    else:
        entries += [(273, 4, offsets), (278, 3, [H if raw is not None else rows]), (279, 4, [len(b) for b in blocks])]
    if extra is not None:
        entries.append((338, 3, [extra]))
    if colourmap:
        entries.append((320, 3, colourmap))
    if orientation:
        entries.append((274, 3, [orientation]))
    for tag, text in ascii_tags:
        entries.append((tag, 2, text.encode() + b'\0'))
    entries.sort()
    data = body
    links = []
    result = b''
    for page in range(pages):
        late = b''
        table = b''
        start = head + len(data)
        size = (8 + 20 * len(entries) + 8) if big else (2 + 12 * len(entries) + 4)
        for tag, typ, values in entries:
            if typ == 2:
                packed, count = bytes(values), len(values)
            else:
                packed, count = struct.pack(e + str(len(values)) + {3: 'H', 4: 'I'}[typ], *values), len(values)
            room = 8 if big else 4
            if len(packed) <= room:
                field = packed.ljust(room, b'\0')
            else:
                at = start + size + len(late)
                field = struct.pack(e + ('Q' if big else 'I'), at)
                late += packed + (b'\0' if len(packed) % 2 else b'')
            table += struct.pack(e + 'HH' + ('Q' if big else 'I'), tag, typ, count) + field
        following = start + size + len(late) if page + 1 < pages else 0
        data += struct.pack(e + ('Q' if big else 'H'), len(entries)) + table + struct.pack(e + ('Q' if big else 'I'), following) + late
        links.append(start)
    mark = b'II' if e == '<' else b'MM'
    if big:
        result = mark + struct.pack(e + 'HHHQ', 43, 8, 0, links[0]) + data
    else:
        result = mark + struct.pack(e + 'HI', 42, links[0]) + data
    open(name + '.tif', 'wb').write(result)


def bilevel(invert):
    out = b''
    for y in range(H):
        n = 0
        for x in range(24):
            bit = (x + y) % 3 == 0 if x < W else 0
            n = n * 2 + (int(bit) ^ invert if x < W else 0)
        out += n.to_bytes(3, 'big')
    return out


def nibbles():
    out = b''
    for y in range(H):
        row = [(x + 2 * y) % 16 for x in range(W)] + [0]
        out += bytes(row[i] * 16 + row[i + 1] for i in range(0, 18, 2))
    return out


def tiffs():
    tiff('g8', v8, 'u8', 1, 1)
    tiff('g16_be', v16, 'u16', 1, 1, e='>')
    tiff('g16_lzw_predictor', v16, 'u16', 1, 1, compression=5, predictor=2)
    tiff('rgb16_deflate_predictor', v16, 'u16', 3, 2, compression=8, predictor=2)
    tiff('rgb16_be_deflate_predictor', v16, 'u16', 3, 2, e='>', compression=8, predictor=2)
    tiff('rgb8_lzw_predictor', v8, 'u8', 3, 2, compression=5, predictor=2)
    tiff('rgb8_packbits', v8, 'u8', 3, 2, compression=32773)
    tiff('rgb8_planar', v8, 'u8', 3, 2, planar=2)
    tiff('rgb16_planar_deflate', v16, 'u16', 3, 2, planar=2, compression=8)
    tiff('rgb16_tiled_lzw', v16, 'u16', 3, 2, tile=16, compression=5)
    tiff('rgba8', v8, 'u8', 4, 2, extra=2)
    tiff('rgba16_associated', v16, 'u16', 4, 2, extra=1)
    tiff('ga16', v16, 'u16', 2, 1, extra=2)
    tiff('g32', v32, 'u32', 1, 1)
    tiff('rgb32_deflate', v32, 'u32', 3, 2, compression=8)
    tiff('i16', lambda x, y, c: v16(x, y, c) - 32768, 'i16', 1, 1)
    tiff('f32', vf, 'f32', 1, 1)
    tiff('f32_rgb_deflate_predictor3', vf, 'f32', 3, 2, compression=8, predictor=3)
    tiff('f32_lzw_predictor3', vf, 'f32', 1, 1, compression=5, predictor=3)
    tiff('f64', vf, 'f64', 1, 1)
    tiff('white_is_zero8', lambda x, y, c: 255 - v8(x, y, c), 'u8', 1, 0)
    tiff('white_is_zero16', lambda x, y, c: 65535 - v16(x, y, c), 'u16', 1, 0)
    tiff('palette8', v8, 'u8', 1, 3, colourmap=[257 * i for i in range(256)] + [257 * (255 - i) for i in range(256)]
         + [257 * (i * 3 % 256) for i in range(256)])
    tiff('bilevel', None, 'u8', 1, 1, raw=bilevel(0), bits=1)
    tiff('bilevel_white_is_zero', None, 'u8', 1, 0, raw=bilevel(1), bits=1)
    tiff('g4', None, 'u8', 1, 1, raw=nibbles(), bits=4)
    tiff('rgb16_big', v16, 'u16', 3, 2, big=True)
    tiff('pages3', v8, 'u8', 3, 2, pages=3, ascii_tags=[(270, 'an invented planet'), (305, 'make_samples'), (306, '2031:03:24 23:00:00')])
    for o in range(1, 9):
        tiff('orientation%d' % o, v8, 'u8', 1, 1, orientation=o)


# ---------------------------------------------------------------- PNG

def chunk(kind, body):
    return struct.pack('>I', len(body)) + kind + body + struct.pack('>I', zlib.crc32(kind + body))


def filtered(rows, bpp):
    """Every filter type in turn."""
    out = b''
    prior = bytes(len(rows[0])) if rows else b''
    for n, row in enumerate(rows):
        t = n % 5
        line = bytearray()
        for i in range(len(row)):
            a = row[i - bpp] if i >= bpp else 0
            b = prior[i]
            c = prior[i - bpp] if i >= bpp else 0
            p = a + b - c
            pa, pb, pc = abs(p - a), abs(p - b), abs(p - c)
            paeth = a if pa <= pb and pa <= pc else b if pb <= pc else c
            line.append((row[i] - [0, a, b, (a + b) // 2, paeth][t]) % 256)
        out += bytes([t]) + bytes(line)
        prior = row
    return out


def png(name, fn, depth, colour, channels, interlaced=False, before=b'', after=b''):
    def row(y, xs):
        values = [fn(x, y, c) for x in xs for c in range(channels)]
        if depth == 16:
            return struct.pack('>%dH' % len(values), *values)
        if depth == 8:
            return bytes(values)
        n = 0
        for v in values:
            n = (n << depth) | v
        fill = -len(values) * depth % 8
        return (n << fill).to_bytes((len(values) * depth + fill) // 8, 'big')
    bpp = max(1, depth * channels // 8)
    if interlaced:
        data = b''
        for x0, y0, dx, dy in ((0, 0, 8, 8), (4, 0, 8, 8), (0, 4, 4, 8), (2, 0, 4, 4), (0, 2, 2, 4), (1, 0, 2, 2), (0, 1, 1, 2)):
            xs = range(x0, W, dx)
            ys = range(y0, H, dy)
            if len(xs) and len(ys):
                data += filtered([row(y, xs) for y in ys], bpp)
    else:
        data = filtered([row(y, range(W)) for y in range(H)], bpp)
    packed = zlib.compress(data)
    half = len(packed) // 2
    open(name + '.png', 'wb').write(
        b'\x89PNG\r\n\x1a\n' + chunk(b'IHDR', struct.pack('>IIBBBBB', W, H, depth, colour, 0, 0, int(interlaced))) + before
        + chunk(b'IDAT', packed[:half]) + chunk(b'IDAT', packed[half:]) + after + chunk(b'IEND', b''))


def exif(e, ifd0, sub, gps=()):
    """A TIFF-structured Exif block; entries are (tag, type, values)."""
    def directory(entries, start, pointers):
        table, late = b'', b''
        rows = sorted(list(entries) + [(t, 4, [p]) for t, p in pointers])
        size = 2 + 12 * len(rows) + 4
        for tag, typ, values in rows:
            if typ == 2:
                packed = values.encode() + b'\0'
                count = len(packed)
            else:
                count = len(values)
                packed = b''.join(struct.pack(e + {3: 'H', 4: 'I'}[typ], v) if typ != 5 else struct.pack(e + 'II', *v) for v in values)
            if len(packed) <= 4:
                field = packed.ljust(4, b'\0')
            else:
                field = struct.pack(e + 'I', start + size + len(late))
                late += packed + (b'\0' if len(packed) % 2 else b'')
            table += struct.pack(e + 'HHI', tag, typ, count) + field
        return struct.pack(e + 'H', len(rows)) + table + b'\0\0\0\0' + late
    pointer_tags = ([34665] if sub else []) + ([34853] if gps else [])
    first = directory(ifd0, 8, [(t, 0) for t in pointer_tags])
    at = 8 + len(first)
    tail = b''
    pointers = []
    if sub:
        pointers.append((34665, at))
        tail += directory(sub, at, [])
    if gps:
        pointers.append((34853, at + len(tail)))
        tail += directory(gps, at + len(tail), [])
    first = directory(ifd0, 8, pointers)
    return (b'II' if e == '<' else b'MM') + struct.pack(e + 'HI', 42, 8) + first + tail


def pngs():
    png('g8', v8, 8, 0, 1)
    png('g16', v16, 16, 0, 1)
    png('rgb8', v8, 8, 2, 3)
    png('rgb16', v16, 16, 2, 3)
    png('rgb16_interlaced', v16, 16, 2, 3, interlaced=True)
    png('g1_interlaced', lambda x, y, c: int((x + y) % 3 == 0), 1, 0, 1, interlaced=True)
    png('g2', lambda x, y, c: (x + 2 * y) % 4, 2, 0, 1)
    png('g4', lambda x, y, c: (x + 2 * y) % 16, 4, 0, 1)
    png('ga8', v8, 8, 4, 2)
    png('ga16', v16, 16, 4, 2)
    png('rgba8', v8, 8, 6, 4)
    png('rgba16_interlaced', v16, 16, 6, 4, interlaced=True)
    palette = b''.join(bytes([i, 255 - i, i * 3 % 256]) for i in range(256))
    png('palette8_transparent', v8, 8, 3, 1, before=chunk(b'PLTE', palette) + chunk(b'tRNS', bytes(range(256))))
    png('palette4_grey', lambda x, y, c: (x + 2 * y) % 16, 4, 3, 1,
        before=chunk(b'PLTE', b''.join(bytes([i * 10] * 3) for i in range(16))))
    png('rgb8_transparent_colour', v8, 8, 2, 3, before=chunk(b'tRNS', struct.pack('>HHH', 0, 50, 100)))
    png('rgb8_gamma', v8, 8, 2, 3, before=chunk(b'gAMA', struct.pack('>I', 100000)) + chunk(b'sRGB', b'\0'))
    block = exif('>', [(274, 3, [6]), (271, 2, 'maker'), (305, 2, 'make_samples')],
                 [(0x9003, 2, '2031:03:24 22:05:30'), (0x9011, 2, '+01:00'), (0x9291, 2, '25'), (0x829A, 5, [(1, 50)])])
    xmp = (b'<?xpacket begin=""?><x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">'
           b'<rdf:Description xmlns:exif="http://ns.adobe.com/exif/1.0/" xmlns:dc="http://purl.org/dc/elements/1.1/" '
           b'exif:DateTimeOriginal="2031-03-24T22:05:30.25+01:00"><dc:creator><rdf:Seq><rdf:li>A. Observer</rdf:li></rdf:Seq></dc:creator>'
           b'</rdf:Description></rdf:RDF></x:xmpmeta>')
    png('facts', v8, 8, 0, 1, before=chunk(b'eXIf', block),
        after=chunk(b'tEXt', b'Title\0an invented planet') + chunk(b'zTXt', b'Comment\0\0' + zlib.compress(b'seeing fair'))
        + chunk(b'iTXt', b'XML:com.adobe.xmp\0\0\0\0\0' + xmp) + chunk(b'tIME', struct.pack('>HBBBBB', 2031, 3, 25, 1, 2, 3)))
    evil = (b'<!DOCTYPE a [<!ENTITY e SYSTEM "file:///etc/hostname"><!ENTITY f "boom">]><x:xmpmeta xmlns:x="adobe:ns:meta/">'
            b'<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description '
            b'xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:title>&e;&f;</dc:title></rdf:Description></rdf:RDF></x:xmpmeta>')
    png('entities', v8, 8, 0, 1, after=chunk(b'iTXt', b'XML:com.adobe.xmp\0\0\0\0\0' + evil)
        + chunk(b'zTXt', b'Bomb\0\0' + zlib.compress(b'A' * 20_000_000, 9)))


# ---------------------------------------------------------------- JPEG (ITU-T T.81), blocks of one value each

def jpeg(name, components, adobe=None, jfif=False, ids=None, app1=b''):
    """Baseline JPEG of 2 x 2 blocks; components: one 2 x 2 list of sample values (0..255) each. Only DC is coded, with a quantiser of 8, so
    that every sample of a block is exactly its value."""
    n = len(components)
    ids = ids or list(range(1, n + 1))
    out = b'\xff\xd8'

    def segment(marker, body):
        return b'\xff' + bytes([marker]) + struct.pack('>H', len(body) + 2) + body
    if jfif:
        out += segment(0xe0, b'JFIF\0\x01\x01\0\0\x01\0\x01\0\0')
    if app1:
        out += segment(0xe1, b'Exif\0\0' + app1)
    if adobe is not None:
        out += segment(0xee, b'Adobe\0\x64\0\0\0\0' + bytes([adobe]))
    out += segment(0xdb, b'\0' + bytes([8] + [1] * 63))
    out += segment(0xc0, struct.pack('>BHHB', 8, 16, 16, n) + b''.join(bytes([i, 0x11, 0]) for i in ids))
    # DC table: twelve categories, all with codes of four bits; AC table: end of block alone, one bit
    out += segment(0xc4, b'\0' + bytes([0, 0, 0, 12] + [0] * 12) + bytes(range(12)))
    out += segment(0xc4, b'\x10' + bytes([1] + [0] * 15) + b'\0')
    out += segment(0xda, bytes([n]) + b''.join(bytes([i, 0]) for i in ids) + b'\0\x3f\0')
    bits = ''
    last = [0] * n
    for y in range(2):
        for x in range(2):
            for c in range(n):
                dc = components[c][y][x] - 128
                d = dc - last[c]
                last[c] = dc
                size = abs(d).bit_length()
                bits += format(size, '04b')
                if size:
                    bits += format(d if d > 0 else d + (1 << size) - 1, '0%db' % size)
                bits += '0'
    bits += '1' * (-len(bits) % 8)
    data = bytes(int(bits[i:i + 8], 2) for i in range(0, len(bits), 8)).replace(b'\xff', b'\xff\0')
    open(name + '.jpg', 'wb').write(out + data + b'\xff\xd9')


def jpegs():
    a, b, c, d = [[10, 200], [128, 255]], [[128, 100], [150, 128]], [[128, 140], [90, 200]], [[255, 128], [60, 200]]
    jpeg('grey', [a], jfif=True)
    jpeg('ycbcr', [a, b, c], jfif=True)
    jpeg('ycbcr_bare', [a, b, c])
    jpeg('rgb_adobe', [a, b, c], adobe=0)
    jpeg('rgb_ids', [a, b, c], ids=[ord('R'), ord('G'), ord('B')])
    jpeg('ycbcr_adobe', [a, b, c], adobe=1)
    jpeg('cmyk_adobe', [a, b, c, d], adobe=0)
    jpeg('ycck_adobe', [a, b, c, d], adobe=2)
    jpeg('cmyk_plain', [a, b, c, d])
    jpeg('facts', [a, b, c], jfif=True, app1=exif(
        '<', [(274, 3, [3]), (315, 2, 'A. Observer'), (270, 2, 'an invented planet')],
        [(0x9003, 2, '2031:03:24 21:05:30'), (0x829A, 5, [(120, 1)])],
        [(0x1D, 2, '2031:03:24'), (7, 5, [(21, 1), (5, 1), (305, 10)])]))


if __name__ == '__main__':
    tiffs()
    pngs()
    jpegs()
