// How does the answer that came with the first page give way to the dashboard's own?
//
// It lies over what the scripts are drawing, which nobody can reach meanwhile, and goes once the row of questions, answer
// and picture stand there.

(() => {
  const PATIENCE = 3000; // ms after which a page that draws no answer is what there is to see
  const DRAWN = [".st-key-questions a", "p.answer", ".picture img"];
  const root = document.getElementById("root");
  const sight = document.getElementById("at-sight");
  let waiting;
  const gone = () => {
    watch.disconnect();
    sight.remove();
    root.inert = false;
  };
  const watch = new MutationObserver(() => {
    if (DRAWN.every((one) => root.querySelector(one))) requestAnimationFrame(gone);
    else if (root.querySelector("h1")) waiting ??= setTimeout(gone, PATIENCE);
  });
  root.inert = true;
  watch.observe(root, { childList: true, subtree: true });
})();
