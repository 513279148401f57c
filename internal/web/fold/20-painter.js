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
    gl.uniformMatrix4fv(gl.getUniformLocation(this.program, "camera"), false, camera(extent(lists), turn, tilt, target.width / target.height));
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

// camera returns the matrix that looks at the middle from outside, z upwards,
// column by column.
function camera({ middle, radius }, turn, tilt, aspect) {
  const [a, b] = [turn, tilt].map((degrees) => (degrees * Math.PI) / 180);
  const right = [Math.cos(a), Math.sin(a), 0];
  const back = [Math.sin(a) * Math.cos(b), -Math.cos(a) * Math.cos(b), Math.sin(b)];
  const up = [-Math.sin(a) * Math.sin(b), Math.cos(a) * Math.sin(b), Math.cos(b)];
  const dot = (v) => v[0] * middle[0] + v[1] * middle[1] + v[2] * middle[2];
  const focus = 3.2;
  const distance = radius * focus * 1.02 / Math.min(1, aspect);
  const [near, far] = [distance - radius * 1.2, distance + radius * 1.2];
  const depth = (near + far) / (near - far);
  const rows = [
    [...right.map((v) => (v * focus) / aspect), (-dot(right) * focus) / aspect],
    [...up.map((v) => v * focus), -dot(up) * focus],
    [...back.map((v) => v * depth), (-dot(back) - distance) * depth + (2 * near * far) / (near - far)],
    [...back.map((v) => -v), dot(back) + distance],
  ];
  return new Float32Array([0, 1, 2, 3].flatMap((column) => rows.map((row) => row[column])));
}
