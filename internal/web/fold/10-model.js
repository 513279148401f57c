const FRAMES = 12; // steps of the folding; the places between are interpolated
const STRIDE = 10; // floats of a corner: place, direction, colour

// readModel reads the corners of all triangles of a binary glTF file of the
// service: [opaque, translucent], each a Float32Array.
function readModel(buffer) {
  const view = new DataView(buffer);
  const size = view.getUint32(12, true);
  const file = JSON.parse(new TextDecoder().decode(new Uint8Array(buffer, 20, size)));
  const data = 28 + size;
  const read = (index, Type, width) => {
    const accessor = file.accessors[index];
    const at = data + (file.bufferViews[accessor.bufferView].byteOffset ?? 0) + (accessor.byteOffset ?? 0);
    return new Type(buffer.slice(at, at + accessor.count * width * 4));
  };
  const lists = [[], []];
  for (const primitive of file.meshes.flatMap((mesh) => mesh.primitives)) {
    const material = file.materials[primitive.material];
    const places = read(primitive.attributes.POSITION, Float32Array, 3);
    const directions = read(primitive.attributes.NORMAL, Float32Array, 3);
    const list = lists[material.alphaMode === "BLEND" ? 1 : 0];
    for (const corner of read(primitive.indices, Uint32Array, 1)) {
      list.push(...places.subarray(3 * corner, 3 * corner + 3), ...directions.subarray(3 * corner, 3 * corner + 3), ...material.pbrMetallicRoughness.baseColorFactor);
    }
  }
  return lists.map((list) => new Float32Array(list));
}

// between mixes two steps of the folding, or takes the nearer one if a fold
// has changed what there is to see.
function between(low, high, part) {
  if (part === 0 || low.some((list, i) => list.length !== high[i].length)) return part < 0.5 ? low : high;
  return low.map((list, i) => list.map((value, k) => value + (high[i][k] - value) * part));
}

// corners returns the eight corners of the box round all places, opposite ones
// first and last.
function corners(lists) {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (const list of lists) {
    for (let at = 0; at < list.length; at += STRIDE) {
      for (let k = 0; k < 3; k++) {
        low[k] = Math.min(low[k], list[at + k]);
        high[k] = Math.max(high[k], list[at + k]);
      }
    }
  }
  return [0, 1, 2, 3, 4, 5, 6, 7].map((i) => low.map((v, k) => (i & (1 << k) ? high[k] : v)));
}

// Model is the folding of one request, fetched step by step.
class Model {
  constructor(address) {
    this.address = address;
    this.frames = [];
  }

  #frame(index) {
    const url = this.address + (this.address.includes("?") ? "&" : "?") + "format=glb&closed=" + Number((index / FRAMES).toFixed(4));
    this.frames[index] ??= fetch(url, { credentials: "omit" }).then((answer) => {
      if (!answer.ok) throw new Error("HTTP " + answer.status);
      return answer.arrayBuffer();
    }).then(readModel).catch((error) => {
      delete this.frames[index];
      throw error;
    });
    return this.frames[index];
  }

  // at returns the corners when it is closed so far, 0 to 1.
  async at(closed) {
    const step = Math.min(closed * FRAMES, FRAMES);
    const [low, high] = await Promise.all([this.#frame(Math.floor(step)), this.#frame(Math.ceil(step))]);
    return between(low, high, step - Math.floor(step));
  }
}
