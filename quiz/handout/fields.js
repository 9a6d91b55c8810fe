"use strict";
document.addEventListener("DOMContentLoaded", function () {
  const cell = function (text) { return '"' + String(text).replace(/"/g, '""') + '"'; };
  document.querySelectorAll("form").forEach(function (form) {
    const said = form.querySelector("output"), name = form.querySelector("[data-name]");
    form.querySelector(".save").hidden = false;
    form.addEventListener("submit", function (event) {
      event.preventDefault();
      const who = name.tagName === "INPUT" ? name.value.trim() : name.textContent.trim();
      const rows = ["code,name,item,answer,sure"];
      form.querySelectorAll("[data-item]").forEach(function (item) {
        let answers = [];
        item.querySelectorAll("[data-answer]").forEach(function (field) {
          if (field.type === "radio" || field.type === "checkbox") {
            if (field.checked) answers.push(field.value);
          } else answers.push(field.value.trim() || "-"); // of several, one that is empty keeps its place
        });
        if (answers.every(function (a) { return a === "-"; })) answers = [];
        const sure = item.querySelector("[data-sure]:checked");
        rows.push([form.dataset.code, who, item.dataset.item, answers.join(", "), sure ? sure.value : ""].map(cell).join(","));
      });
      const file = "answers-" + form.dataset.code + ".csv", link = document.createElement("a");
      link.href = URL.createObjectURL(new Blob(["\ufeff" + rows.join("\r\n") + "\r\n"], { type: "text/csv" }));
      link.download = file;
      document.body.append(link);
      link.click();
      link.remove();
      said.textContent = said.dataset.saved.replace("${file}", file);
    });
  });
});
