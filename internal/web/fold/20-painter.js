const VERTEX = `attribute vec3 place; attribute vec3 direction; attribute vec4 colour;
uniform mat4 camera; uniform vec3 light; varying vec4 shade;
void main() {
  gl_Position = camera * vec4(place, 1.0);
  float lit = 0.62 + 0.38 * dot(normalize(direction), light);
  shade = vec4(colour.rgb * lit + 0.05, 1.0) * colour.a;
}`;
const FRAGMENT = "precision mediump float; varying vec4 shade; void main() { gl_FragColor = shade; }";

// Painter paints corners with WebGL. All views of a page share one, since
// browsers allow few contexts.
class Painter {
  static #one;

  // shared returns the painter, or null if the browser has no WebGL.
  static shared() {
    if (Painter.#one === undefined) {
      const canvas = document.createElement("canvas");
      const gl = canvas.getContext("webgl", { antialias: true, premultipliedAlpha: true, preserveDrawingBuffer: true });
      Painter.#one = gl && new Painter(canvas, gl);
      canvas.addEventListener("webglcontextlost", () => (Painter.#one = undefined));
    }
    return Painter.#one;
  }

  constructor(canvas, gl) {
    Object.assign(this, { canvas, gl, program: gl.createProgram(), buffer: gl.createBuffer() });
    for (const [type, text] of [[gl.VERTEX_SHADER, VERTEX], [gl.FRAGMENT_SHADER, FRAGMENT]]) {
      const shader = gl.createShader(type);
      gl.shaderSource(shader, text);
      gl.compileShader(shader);
      gl.attachShader(this.program, shader);
    }
    gl.linkProgram(this.program);
    gl.useProgram(this.program);
    gl.bindBuffer(gl.ARRAY_BUFFER, this.buffer);
    for (const [name, size, offset] of [["place", 3, 0], ["direction", 3, 3], ["colour", 4, 6]]) {
      const at = gl.getAttribLocation(this.program, name);
      gl.enableVertexAttribArray(at);
      gl.vertexAttribPointer(at, size, gl.FLOAT, false, STRIDE * 4, offset * 4);
    }
    gl.enable(gl.DEPTH_TEST);
    gl.blendFunc(gl.ONE, gl.ONE_MINUS_SRC_ALPHA);
  }

  // paint paints the lists as seen from turn and tilt, in degrees, onto a
  // canvas of the page.
  paint(lists, turn, tilt, target) {
    const { gl, canvas } = this;
    Object.assign(canvas, { width: target.width, height: target.height });
    gl.viewport(0, 0, target.width, target.height);
    gl.clearColor(0, 0, 0, 0);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
    gl.uniformMatrix4fv(gl.getUniformLocation(this.program, "camera"), false, camera(corners(lists), turn, tilt, target.width / target.height));
    gl.uniform3f(gl.getUniformLocation(this.program, "light"), -0.35, -0.5, 0.79);
    lists.forEach((list, translucent) => {
      gl[translucent ? "enable" : "disable"](gl.BLEND);
      gl.depthMask(!translucent);
      gl.bufferData(gl.ARRAY_BUFFER, list, gl.DYNAMIC_DRAW);
      gl.drawArrays(gl.TRIANGLES, 0, list.length / STRIDE);
    });
    gl.depthMask(true);
    const context = target.getContext("2d");
    context.clearRect(0, 0, target.width, target.height);
    context.drawImage(canvas, 0, 0);
  }
}

// camera returns the matrix that looks at the box from outside, z upwards, from
// as near as shows all of it, column by column.
function camera(box, turn, tilt, aspect) {
  const [a, b] = [turn, tilt].map((degrees) => (degrees * Math.PI) / 180);
  const right = [Math.cos(a), Math.sin(a), 0];
  const back = [Math.sin(a) * Math.cos(b), -Math.cos(a) * Math.cos(b), Math.sin(b)];
  const up = [-Math.sin(a) * Math.sin(b), Math.cos(a) * Math.sin(b), Math.cos(b)];
  const middle = box[0].map((value, k) => (value + box[7][k]) / 2);
  const along = (v, p) => v[0] * p[0] + v[1] * p[1] + v[2] * p[2];
  const dot = (v) => along(v, middle);
  const off = box.map((corner) => [right, up, back].map((v) => along(v, corner) - dot(v)));
  const radius = Math.max(...off.map((p) => Math.hypot(...p))) || 1;
  const focus = 3.2;
  const distance = 1.06 * Math.max(...off.map(([x, y, z]) => Math.max((Math.abs(x) * focus) / aspect, Math.abs(y) * focus) + z));
  const [near, far] = [Math.max(distance - radius * 1.1, radius / 50), distance + radius * 1.1];
  const depth = (near + far) / (near - far);
  const rows = [
    [...right.map((v) => (v * focus) / aspect), (-dot(right) * focus) / aspect],
    [...up.map((v) => v * focus), -dot(up) * focus],
    [...back.map((v) => v * depth), (-dot(back) - distance) * depth + (2 * near * far) / (near - far)],
    [...back.map((v) => -v), dot(back) + distance],
  ];
  return new Float32Array([0, 1, 2, 3].flatMap((column) => rows.map((row) => row[column])));
}
